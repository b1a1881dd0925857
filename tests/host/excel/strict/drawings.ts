import type { Batch } from './batch';
import { refused } from './refusals';

/** Charts can only be made here, never read: whatever is asked for besides is undefined and throws. */
export function chartsOf({ writes, note }: Batch): object {
  const seriesOf = (index: number) => ({
    set name(name: string) {
      note(`series ${index} name = ${JSON.stringify(name)}`);
    },
    set chartType(type: string) {
      note(`series ${index} chartType = ${JSON.stringify(type)}`);
    },
    setXAxisValues: (range: { __address(): string }) => note(`series ${index} x ${range.__address()}`),
    setValues: (range: { __address(): string }) => note(`series ${index} y ${range.__address()}`),
  });
  const titled = (what: string, property: string) =>
    Object.defineProperty({}, property, { set: (text: string) => note(`chart ${what} ${JSON.stringify(text)}`) });
  const add = (type: string, range: { __address(): string }, by: string) => {
    // No sheet of Excel is as wide as that.
    writes.push(() => {
      if (range.__address().includes('!ZZZ')) throw refused('no such range', 'InvalidArgument');
    });
    note(`chart ${type} of ${range.__address()} by ${by}`);
    let count = 1;
    return {
      series: {
        getItemAt: (index: number) => seriesOf(index),
        add: (name: string) => {
          note(`series ${count} added ${name}`);
          return seriesOf(count++);
        },
      },
      title: titled('title', 'text'),
      legend: titled('legend', 'position'),
      axes: {
        categoryAxis: { title: titled('categoryAxis', 'text') },
        valueAxis: { title: titled('valueAxis', 'text') },
      },
      setPosition: (from: string, to: string) => note(`chart over ${from} to ${to}`),
    };
  };
  return { add };
}

/** Drawings can only be added; every property set on one is noted. */
export function shapesOf({ note }: Batch, sheet: string): object {
  return {
    addImage: (image: string) => {
      note(`picture ${image} on ${sheet}`);
      return new Proxy(
        {},
        { set: (_, property, value) => (note(`picture ${String(property)} = ${JSON.stringify(value)}`), true) },
      );
    },
  };
}
