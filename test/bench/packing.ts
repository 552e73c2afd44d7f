import { packed } from './packingCore.js';
import { packingSets } from './packingSets.js';
import { quantile } from './quantile.js';

const [folder, wanted] = process.argv.slice(2);
if (folder === undefined) {
  console.error('usage: npm run bench:packing -- <folder of bin-packing sets> [only this set]');
  process.exit(1);
}

/** ms for one instance; the search itself counts steps, so an instance that takes longer is not stopped, only not counted. */
const LIMIT = 10_000;

const sets = packingSets(folder).filter(({ name }) => wanted === undefined || name === wanted);
if (sets.length > 0) packed(sets[0].instances[0]);
for (const { name, instances } of sets) {
  const times: number[] = [];
  const open: string[] = [];
  let [closed, found, bounded] = [0, 0, 0];
  for (const instance of instances) {
    const start = performance.now();
    const answer = packed(instance);
    const time = performance.now() - start;
    times.push(time);
    const { bins = Infinity, bound = 0 } = answer ?? {};
    if (bins < instance.optimum || bound > instance.optimum) throw new Error(`${instance.name}: ${bins} bins, bound ${bound}`);
    if (bins === instance.optimum) found++;
    if (bound === instance.optimum) bounded++;
    if (bins === bound && time <= LIMIT) closed++;
    else open.push(`${instance.name} ${bound} to ${bins} (${instance.optimum}) in ${(time / 1000).toFixed(1)} s`);
  }
  console.log(
    `${name}: closed within ${LIMIT / 1000} s ${closed} of ${instances.length}; optimum found ${found}, bound at the optimum ${bounded}; ms: median ${quantile(times, 0.5).toFixed(1)}, greatest ${quantile(times, 1).toFixed(0)}`,
  );
  if (open.length > 0) console.log(`  not closed: ${open.join(', ')}`);
}
