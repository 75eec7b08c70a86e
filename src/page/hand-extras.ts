import { stopNotes } from '../block/hand-notes.ts';
import { type HandFile, LONGEST_DIAGNOSIS, MOST_WEEKS } from '../hand/hand-schema.ts';
import { STOP_SIGNS } from '../hand/signs.ts';
import { type TargetMotion, targetMotionFields } from '../hand/target-motion.ts';
import { plain } from '../units/number.ts';
import { type DecimalSign, type Entries, emptyEntries, MOTION_IDS, type MotionId, type TypedMotion } from './state.ts';
import { readAngle } from './typed-motion.ts';

type FiledTarget = NonNullable<HandFile['target']>;

/** Where each motion of the page stands in a hand file. */
const MOTION_KEY: Readonly<Record<MotionId, TargetMotion>> = {
  active: 'pipActive',
  passive: 'pipPassive',
  other: 'otherHandPip',
  mpActive: 'mpActive',
  mpPassive: 'mpPassive',
};

/** What a hand file's target holds beside digit and deficits: motion, stop signs, diagnosis, weeks. What cannot be read stays out; the page names it. */
export function targetExtras(entries: Entries): Partial<FiledTarget> {
  const motions = MOTION_IDS.flatMap((id) => {
    if ((id === 'active' || id === 'passive') && !saysMore(entries, id)) return [];
    const filed = filedMotion(entries.motion[id], MOTION_KEY[id]);
    return Object.keys(filed).length === 0 ? [] : [[MOTION_KEY[id], filed] as const];
  });
  const diagnosis = entries.diagnosis.trim().slice(0, LONGEST_DIAGNOSIS);
  const weeks = Number(entries.weeks.trim().replace(',', '.'));
  const isWeeks = entries.weeks.trim() !== '' && Number.isFinite(weeks) && weeks >= 0 && weeks <= MOST_WEEKS;
  const signs = entries.stop === 'some' ? [...entries.stopSigns] : [];
  return {
    ...Object.fromEntries(motions),
    ...(diagnosis === '' ? {} : { diagnosis }),
    ...(isWeeks ? { weeks } : {}),
    ...(entries.boutonniere ? { boutonniere: true } : {}),
    ...(entries.centralSlip === '' ? {} : { centralSlip: entries.centralSlip }),
    ...(signs.length === 0 ? {} : { stopSigns: signs }),
  };
}

/** Whether a PIP motion says more than its two deficits: beyond straight, or flexion against the other hand. */
function saysMore({ motion }: Entries, id: 'active' | 'passive'): boolean {
  const straight = readAngle(motion[id].lacks);
  return (straight.kind === 'degrees' && straight.degrees < 0) || motion.other.bends.trim() !== '';
}

/** The same read back. A sign that the surgeon's word has lifted is not asked about again. */
export function extrasOf(
  target: FiledTarget | undefined,
  decimal: DecimalSign,
): Pick<Entries, 'motion' | 'diagnosis' | 'weeks' | 'stop' | 'stopSigns'> {
  const none = emptyEntries(decimal);
  const motion = Object.fromEntries(
    MOTION_IDS.map((id) => [id, typedMotion(target?.[MOTION_KEY[id]], decimal) ?? none.motion[id]]),
  ) as Entries['motion'];
  const standing = new Set(stopNotes(target ?? {}).flatMap((note) => (note.rule === 'STOP_SIGN' ? [note.sign] : [])));
  const stopSigns = STOP_SIGNS.filter((sign) => standing.has(sign));
  return {
    motion,
    diagnosis: target?.diagnosis ?? '',
    weeks: target?.weeks === undefined ? '' : plain(target.weeks, 1).replace('.', decimal),
    stop: stopSigns.length > 0 ? 'some' : '',
    stopSigns,
  };
}

function filedMotion({ lacks, bends }: TypedMotion, of: TargetMotion): Record<string, number> {
  const fields = targetMotionFields(of);
  const filed: Record<string, number> = {};
  const put = (key: keyof typeof fields, degrees: number) => {
    const { from, to } = fields[key].refuse;
    if (degrees >= from && degrees <= to) filed[key] = degrees;
  };
  const straight = readAngle(lacks);
  if (straight.kind === 'degrees') put(straight.degrees < 0 ? 'hyperextension' : 'extensionDeficit', Math.abs(straight.degrees));
  const bent = readAngle(bends);
  if (bent.kind === 'degrees') put('flexion', bent.degrees);
  return filed;
}

/** Null where the file says nothing of the motion. */
function typedMotion(filed: FiledTarget[TargetMotion], decimal: DecimalSign): TypedMotion | null {
  if (filed === undefined) return null;
  const written = (value: number | string | undefined) =>
    value === undefined ? '' : typeof value === 'number' ? plain(value, 6).replace('.', decimal) : value;
  const beyond = filed.hyperextension === undefined || Number(filed.hyperextension) === 0 ? null : `hyper ${written(filed.hyperextension)}`;
  return { lacks: beyond ?? written(filed.extensionDeficit ?? filed.hyperextension), bends: written(filed.flexion) };
}
