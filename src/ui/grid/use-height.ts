import { type RefObject, useLayoutEffect, useState } from 'react';

/** The height of an element in whole pixels as it is now, whatever the size of type; `first` until it is measured. */
export function useHeight(element: RefObject<HTMLElement | null>, first: number): number {
  const [height, setHeight] = useState(first);
  useLayoutEffect(() => {
    const node = element.current;
    if (node === null) return;
    const measure = () => setHeight(node.offsetHeight || first);
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(node);
    return () => observer.disconnect();
  }, [element, first]);
  return height;
}
