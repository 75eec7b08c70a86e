import knife from '../../../templates/cutters/knife.json' with { type: 'json' };
import laserIfAllowed from '../../../templates/cutters/laser-if-allowed.json' with { type: 'json' };
import penAndScissors from '../../../templates/cutters/pen-and-scissors.json' with { type: 'json' };
import { type CutterProfile, readCutter } from './cutter-profile.ts';

const FILES: readonly unknown[] = [knife, penAndScissors, laserIfAllowed];

let loaded: readonly CutterProfile[] | null = null;

/** The profiles in `templates/cutters`. Throws only if a shipped file is broken. */
export function cutters(): readonly CutterProfile[] {
  loaded ??= FILES.map((file) => {
    const profile = readCutter(file, 'templates/cutters');
    if (!profile.ok) throw new Error(profile.problems.map((p) => p.message).join('\n'));
    return profile.value;
  });
  return loaded;
}

/** The profile of that id, or undefined. */
export function cutterById(id: string): CutterProfile | undefined {
  return cutters().find((profile) => profile.id === id);
}
