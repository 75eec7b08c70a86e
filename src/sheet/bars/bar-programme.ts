import { pricedPattern } from './priced-pattern.ts';

/** What a column adds to some kinds, as pairs. */
type Adds = readonly (readonly [kind: number, count: number])[];

/** A way to cut a bar, or what stands in for one in the programme, with its cost in bars. */
interface Column {
  readonly adds: Adds;
  readonly cost: number;
  readonly isPattern: boolean;
}

export interface UsedPattern {
  readonly row: number;
  readonly adds: Adds;
  /** How many bars are cut so; a fraction. */
  readonly amount: number;
}

/** Reduced costs and amounts smaller than this are rounding. */
const ZERO = 1e-9;
/** A pattern must be worth more than its bar by this to enter. */
const GAIN = 1e-7;
/** A stand-in costs more than any two bars, so that it leaves the basis when it can. */
const STAND_IN_COST = 3;
/** At the start a kind cut alone costs little more than its length, so that the duals begin near lengths; before the end it costs its bar. */
const START_WASTE = 1.05;
/** Pivots after which the duals are computed afresh. */
const REFRESH = 50;

/**
 * The linear programme of bar cutting with columns made as needed: fewest bars, patterns in any fraction, every kind cut at least as often
 * as asked (Gilmore & Gomory, Oper Res 1961;9:849-859). Dense inverse, deterministic.
 */
export class BarProgramme {
  readonly demand: number[];
  /** Work done, about one multiplication each; the measure of effort that does not depend on the machine. */
  work = 0;
  readonly lengths: readonly number[];
  private readonly capacity: number;
  private readonly atMost: readonly number[];
  private basis: Column[];
  private inverse: Float64Array[];
  private amounts: Float64Array;
  private readonly pool: Adds[];
  private readonly duals: Float64Array;

  constructor(lengths: readonly number[], counts: readonly number[], capacity: number, pool: readonly Adds[]) {
    const m = lengths.length;
    this.lengths = lengths;
    this.capacity = capacity;
    this.demand = [...counts];
    this.atMost = counts;
    this.pool = [...pool];
    this.duals = new Float64Array(m);
    const alone = lengths.map((length, i) => Math.min(counts[i] as number, Math.floor(capacity / length)));
    this.basis = alone.map((count, i) => ({
      adds: [[i, count]],
      cost: Math.min(1, (START_WASTE * count * (lengths[i] as number)) / capacity),
      isPattern: true,
    }));
    this.inverse = alone.map((count, i) => {
      const row = new Float64Array(m);
      row[i] = 1 / count;
      return row;
    });
    this.amounts = Float64Array.from(alone, (count, i) => (counts[i] as number) / count);
  }

  /**
   * Solves from the present basis. Returns the value and, when the pricing was proven, a lower bound on it (Farley, Oper Res
   * 1990;38:922-923; else 0); null when `mostWork` is used up first.
   */
  solve(mostWork: number): { readonly value: number; readonly bound: number } | null {
    const m = this.lengths.length;
    const stop = this.work + mostWork;
    for (let pivots = 0; this.work < stop; pivots++) {
      if (pivots % REFRESH === 0) this.refreshDuals();
      const surplus = this.duals.findIndex((dual) => dual < -ZERO);
      if (surplus >= 0) {
        this.enter({ adds: [[surplus, -1]], cost: 0, isPattern: false });
        continue;
      }
      const known = this.bestKnown();
      if (known) {
        this.enter({ adds: known, cost: 1, isPattern: true });
        continue;
      }
      const priced = pricedPattern(this.lengths, this.duals, this.atMost, this.capacity, 1 + GAIN);
      this.work += priced.work;
      if (priced.value <= 1 + GAIN) {
        if (this.raiseStartCosts()) continue;
        let worth = 0;
        for (let i = 0; i < m; i++) worth += Math.max(0, this.duals[i] as number) * (this.demand[i] as number);
        return { value: this.value(), bound: priced.proven ? worth / (1 + GAIN) : 0 };
      }
      const adds = priced.chosen.flatMap((count, i) => (count > 0 ? [[i, count] as const] : []));
      this.pool.push(adds);
      this.enter({ adds, cost: 1, isPattern: true });
    }
    return null;
  }

  /** The programme as it stands, to go on from here in more than one way; patterns made by one are known to both. */
  copy(): BarProgramme {
    const other = new BarProgramme([], [], this.capacity, []);
    return Object.assign(other, {
      lengths: this.lengths,
      atMost: this.atMost,
      demand: [...this.demand],
      basis: [...this.basis],
      inverse: this.inverse.map((row) => row.slice()),
      amounts: this.amounts.slice(),
      duals: this.duals.slice(),
      pool: this.pool,
    });
  }

  /** Share of the kinds that are still asked for. */
  activeShare(): number {
    return this.demand.filter((count) => count > 0).length / this.demand.length;
  }

  /** A programme of what is still asked for alone, not yet solved, with those known patterns that cut nothing beyond it. */
  reduced(): BarProgramme {
    const active = this.demand.flatMap((count, i) => (count > 0 ? [i] : []));
    const place = new Map(active.map((i, k) => [i, k]));
    const pool = this.pool
      .filter((adds) => adds.every(([i, add]) => add <= (this.demand[i] as number)))
      .map((adds) => adds.map(([i, add]) => [place.get(i) as number, add] as const));
    return new BarProgramme(
      active.map((i) => this.lengths[i] as number),
      active.map((i) => this.demand[i] as number),
      this.capacity,
      pool,
    );
  }

  value(): number {
    return this.basis.reduce((sum, column, r) => sum + column.cost * (this.amounts[r] as number), 0);
  }

  /** Patterns in use, none of them zero times. */
  used(): readonly UsedPattern[] {
    return this.basis.flatMap(({ adds, isPattern }, row) =>
      isPattern && (this.amounts[row] as number) > ZERO ? [{ row, adds, amount: this.amounts[row] as number }] : [],
    );
  }

  /** Every pattern that was made so far, to start another programme from. */
  patterns(): readonly Adds[] {
    return this.pool;
  }

  /**
   * Cuts the pattern of a row `times` times and takes that off the demand. The rest of the basis stays as it is; when more was cut than the
   * programme had, a stand-in takes the row until the next `solve` drives it out.
   */
  cut(row: number, times: number): void {
    const column = this.basis[row];
    if (!column) throw new RangeError(`no row ${row}`);
    for (const [i, add] of column.adds) this.demand[i] = (this.demand[i] as number) - times * add;
    const amount = (this.amounts[row] as number) - times;
    this.amounts[row] = Math.abs(amount);
    if (amount >= 0) return;
    if (amount > -ZERO) {
      this.amounts[row] = 0;
      return;
    }
    this.basis[row] = { adds: column.adds.map(([i, add]) => [i, -add] as const), cost: STAND_IN_COST, isPattern: false };
    const inverse = this.inverse[row] as Float64Array;
    for (let k = 0; k < inverse.length; k++) inverse[k] = -(inverse[k] as number);
  }

  /** Gives every pattern in the basis its true cost; false when all had it. */
  private raiseStartCosts(): boolean {
    if (this.basis.every((column) => !column.isPattern || column.cost === 1)) return false;
    this.basis = this.basis.map((column) => (column.isPattern ? { ...column, cost: 1 } : column));
    this.refreshDuals();
    return true;
  }

  private refreshDuals(): void {
    const m = this.lengths.length;
    this.duals.fill(0);
    for (const [r, { cost }] of this.basis.entries()) {
      if (cost === 0) continue;
      const row = this.inverse[r] as Float64Array;
      for (let i = 0; i < m; i++) this.duals[i] = (this.duals[i] as number) + cost * (row[i] as number);
    }
    this.work += m * m;
  }

  private worth(adds: Adds): number {
    let sum = 0;
    for (const [i, add] of adds) sum += add * (this.duals[i] as number);
    return sum;
  }

  private bestKnown(): Adds | null {
    let best: Adds | null = null;
    let most = 1 + GAIN;
    for (const adds of this.pool) {
      const worth = this.worth(adds);
      this.work += adds.length;
      if (worth > most) {
        most = worth;
        best = adds;
      }
    }
    return best;
  }

  /** One pivot: the column enters, the row with the least ratio leaves; of equal ratios the largest pivot, which is the safest. */
  private enter(column: Column): void {
    const m = this.lengths.length;
    const gain = column.cost - this.worth(column.adds);
    const step = new Float64Array(m);
    let leaves = -1;
    let least = Number.POSITIVE_INFINITY;
    for (let r = 0; r < m; r++) {
      const row = this.inverse[r] as Float64Array;
      let pivot = 0;
      for (const [i, add] of column.adds) pivot += add * (row[i] as number);
      step[r] = pivot;
      if (pivot <= ZERO) continue;
      const ratio = (this.amounts[r] as number) / pivot;
      if (ratio < least - ZERO || (ratio < least + ZERO && pivot > (step[leaves] ?? 0))) {
        least = Math.min(least, ratio);
        leaves = r;
      }
    }
    // Costs are at least 0, so the programme is bounded; without a leaving row the numbers have gone astray.
    if (leaves < 0) throw new RangeError('bar programme: no row leaves');
    const pivotRow = this.inverse[leaves] as Float64Array;
    const pivot = step[leaves] as number;
    const amount = Math.max(0, (this.amounts[leaves] as number) / pivot);
    for (let i = 0; i < m; i++) {
      const entry = (pivotRow[i] as number) / pivot;
      pivotRow[i] = entry;
      this.duals[i] = (this.duals[i] as number) + gain * entry;
    }
    for (let r = 0; r < m; r++) {
      const factor = step[r] as number;
      if (r === leaves || Math.abs(factor) < 1e-14) continue;
      const row = this.inverse[r] as Float64Array;
      for (let i = 0; i < m; i++) row[i] = (row[i] as number) - factor * (pivotRow[i] as number);
      this.amounts[r] = Math.max(0, (this.amounts[r] as number) - factor * amount);
      this.work += m;
    }
    this.amounts[leaves] = amount;
    this.basis[leaves] = column;
    this.work += m * (3 + column.adds.length);
  }
}
