/** The other side of `startPortProcess`: what it was ordered to do. */
export function readOrders<Orders>(): Orders {
  return JSON.parse(process.env.ORDERS ?? '{}');
}

/** Says that this process serves on `port`, and from then on how much memory it uses when asked. */
export function serveOn(port: number): void {
  process.on('message', () => {
    globalThis.gc?.();
    const { heapUsed, arrayBuffers } = process.memoryUsage();
    process.send?.(heapUsed + arrayBuffers);
  });
  console.log(JSON.stringify({ port }));
}
