/** What a batch of so many hands took. */
export interface BatchTime {
  readonly hands: number;
  readonly seconds: number;
  readonly cpuSeconds: number;
}

/** As which power of the number of hands the processor time grows: slope of the logarithms, least squares. At least two batches of different size. */
export function exponentOf(batches: readonly Pick<BatchTime, 'hands' | 'cpuSeconds'>[]): number {
  const points = batches.map(({ hands, cpuSeconds }) => ({ x: Math.log(hands), y: Math.log(cpuSeconds) }));
  const mean = (list: readonly number[]) => list.reduce((sum, value) => sum + value, 0) / list.length;
  const [middleX, middleY] = [mean(points.map((p) => p.x)), mean(points.map((p) => p.y))];
  const products = points.reduce((sum, p) => sum + (p.x - middleX) * (p.y - middleY), 0);
  return products / points.reduce((sum, p) => sum + (p.x - middleX) ** 2, 0);
}
