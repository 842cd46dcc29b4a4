// What has come of checks: of one, and counted.
import {batteryOf, judge} from './reading.js';

// outcomes are the results of all checks, or of those of a section.
export function outcomes(keeping, sections) {
  const count = {pass: 0, fail: 0, open: 0};
  for (const section of sections) {
    for (const check of section.checks) {
      const {pass} = outcome(keeping, section, check);
      count[pass === undefined ? 'open' : pass ? 'pass' : 'fail']++;
    }
  }
  return count;
}

// outcome is the result of one check, held against the battery where it is.
export function outcome(keeping, section, check) {
  return judge(check, keeping.reading(section, check), battery(keeping, section, check));
}

// battery is the reading that a check is held against, in volts; NaN = not taken yet.
export function battery(keeping, section, check) {
  const post = section.checks.find((c) => c.number === check.against);
  return post ? batteryOf(check, keeping.reading(section, post)) : NaN;
}
