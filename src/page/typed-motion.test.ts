import { describe, expect, it } from 'vitest';
import { endsOfMotion, neutralZero, readAngle, readNeutralZero } from './typed-motion.ts';

describe('a motion as it is typed', () => {
  it('is an angle, hyperextension by its word, and never a sign', () => {
    expect(readAngle('25')).toEqual({ kind: 'degrees', degrees: 25 });
    expect(readAngle('12,5°')).toEqual({ kind: 'degrees', degrees: 12.5 });
    expect(readAngle('hyper 10')).toEqual({ kind: 'degrees', degrees: -10 });
    for (const word of ['hyper', 'Hiper', 'hiperextensión', 'über', 'Überstreckung', 'ueber', 'H'])
      expect([word, readAngle(`${word} 10`)]).toEqual([word, { kind: 'degrees', degrees: -10 }]);
    expect(readAngle('-10').kind).toBe('sign');
    expect(readAngle('+10').kind).toBe('sign');
    expect(readAngle('ten').kind).toBe('unreadable');
    expect(readAngle('  ').kind).toBe('blank');
  });

  // Neutral-zero notation, AO: extension-0-flexion.
  it.each([
    ['0-25-85', '25', '85'],
    ['10-0-85', 'hyper 10', '85'],
    ['0 / 0 / 100', '0', '100'],
  ])('%s in one field is both numbers, and is shown back so', (text, lacks, bends) => {
    expect(readNeutralZero(text)).toEqual({ lacks, bends });
    expect(neutralZero({ lacks, bends })).toBe(text.replaceAll(' / ', '-'));
  });

  it.each(['25/85', '10-25-85', '0-25', ''])('%s is no such motion', (text) => expect(readNeutralZero(text)).toBeNull());

  it('of a visit and of the finger is two fields', () => {
    expect(endsOfMotion('motion.mpActive.bends')).toEqual({ lacks: 'motion.mpActive.lacks', bends: 'motion.mpActive.bends' });
    expect(endsOfMotion('visit.lacks')).toEqual({ lacks: 'visit.lacks', bends: 'visit.bends' });
    expect(endsOfMotion('visit.passiveBends')).toEqual({ lacks: 'visit.passiveLacks', bends: 'visit.passiveBends' });
    expect(endsOfMotion('visit.pain')).toBeNull();
  });

  it('is shown back only when both ends are there', () => expect(neutralZero({ lacks: '25', bends: '' })).toBeNull());
});
