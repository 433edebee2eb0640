/** Lets so many in at once, in the order in which they came. */
export function gate(most: number) {
  let inside = 0;
  const queue: (() => void)[] = [];
  return {
    enter: () =>
      new Promise<void>((resolve) => {
        if (inside >= most) return void queue.push(resolve);
        inside++;
        resolve();
      }),
    leave() {
      const next = queue.shift();
      if (next) next();
      else inside--;
    },
  };
}
