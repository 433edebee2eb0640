import type { ChangeEvidence } from './change-evidence.ts';
import type { Limits } from '../rules/limits.ts';

/** One number behind the sentence, with where it comes from. */
export interface NumberRow {
  name: string;
  value: string;
  how: string;
}

/** The numbers behind a sentence about change, in the order in which they are worth reading. */
export function numbersBehind(evidence: ChangeEvidence, { repeatDays }: Pick<Limits, 'repeatDays'>): NumberRow[] {
  const points = (value: number) => `${value > 0 ? '+' : ''}${value.toFixed(1)} points`;
  const rows: NumberRow[] = [];
  const add = (name: string, value: string, how: string) => rows.push({ name, value, how });
  add(
    'Baseline, and the last two visits',
    `${evidence.before.toFixed(1)} %, ${evidence.now.toFixed(1)} %`,
    `mean of ${evidence.baseline.length} and of ${Math.min(2, evidence.later.length)} visits, percent of words read`,
  );
  if (evidence.line) {
    const { slope, interval, confidence } = evidence.line;
    const range = interval ? ` (${points(interval.low)} to ${points(interval.high)})` : '';
    const exact = confidence
      ? `; the interval holds in ${confidence > 0.99 ? 'more than 99' : (confidence * 100).toFixed(0)} of 100 cases`
      : '; too few visits for an interval';
    add('Change a week', `${points(slope)}${range}`, `Theil-Sen slope (Sen 1968)${exact}`);
  }
  if (evidence.tau.tauB !== null) {
    const p = evidence.tau.p === null ? '' : `, p ${evidence.tau.p.toFixed(3)}`;
    add(
      'Trend',
      `tau-b ${evidence.tau.tauB.toFixed(2)}${p}`,
      `Kendall (1970), ${evidence.tau.pMethod ?? 'no'} p; visits are not independent`,
    );
  }
  if (evidence.band) {
    const { low, high, n } = evidence.band;
    add(
      'Band of the baseline',
      `${low.toFixed(1)} to ${high.toFixed(1)} %`,
      `mean and two standard deviations of ${n} visits; rule from memory: two visits in a row outside`,
    );
  }
  if (evidence.firstAgainstLast) {
    const d = evidence.firstAgainstLast;
    add(
      'Last visit against baseline',
      `${points(d.difference * 100)} (${points(d.low * 100)} to ${points(d.high * 100)})`,
      'difference of proportions, method 10 (Newcombe 1998); words of one page are alike, so it is a little too narrow',
    );
  }
  if (evidence.nap) {
    add(
      'Pairs that improved',
      evidence.nap.nap.toFixed(2),
      'nonoverlap of all pairs (Parker & Vannest 2009); 0.5 is chance, 1 no overlap',
    );
  }
  if (evidence.correctedTau?.corrected) {
    add(
      'With the baseline’s own trend taken out',
      evidence.correctedTau.tau.toFixed(2),
      'baseline-corrected tau (Tarlow 2017)',
    );
  }
  if (evidence.mdc) {
    const { mdc95, sem, pairs, provisional } = evidence.mdc;
    add(
      'Smallest change that counts',
      `${mdc95.toFixed(1)} points${provisional ? ', provisional' : ''}`,
      `minimal detectable change, 95 %, from ${pairs} repeat pairs of this clinic’s clients (Weir 2005); standard error of measurement ${sem.toFixed(1)} points`,
    );
  } else {
    add(
      'Smallest change that counts',
      'not known',
      `two repeat pairs at least are needed in the clinic: two baseline samples of one client within ${repeatDays} days`,
    );
  }
  return rows;
}
