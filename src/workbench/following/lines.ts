/** Where rows or columns stand after some were inserted, removed or moved. */
export interface Lines {
  readonly start: number;
  /** 0 once all were removed: then they would stand at `start`. */
  readonly size: number;
}

export function inserted({ start, size }: Lines, at: number, count: number): Lines {
  if (at <= start) return { start: start + count, size };
  return at < start + size ? { start, size: size + count } : { start, size };
}

export function removed({ start, size }: Lines, at: number, count: number): Lines {
  const kept = (line: number) => line - Math.max(0, Math.min(line, at + count) - at);
  const first = kept(start);
  return { start: first, size: kept(start + size) - first };
}

/** `to` is the line before which they are put, counted before the move. */
export function moved(lines: Lines, at: number, count: number, to: number): Lines {
  const { start, size } = lines;
  const target = to > at ? to - count : to;
  const end = start + size;
  if (start >= at && end <= at + count) return { start: start - at + target, size };
  // A change of order among them leaves them the same lines.
  if (at >= start && at + count <= end && to >= start && to <= end) return lines;
  return inserted(removed(lines, at, count), target, count);
}

/** Those that a move puts apart from the others, where it moves only some of them. */
export function strayed(
  { start, size }: Lines,
  at: number,
  count: number,
  to: number,
): Lines | undefined {
  const end = start + size;
  const [first, last] = [Math.max(start, at), Math.min(end, at + count)];
  const some = last > first && last - first < size;
  if (!some || (to >= start && to <= end)) return undefined;
  const target = to > at ? to - count : to;
  return { start: target + first - at, size: last - first };
}
