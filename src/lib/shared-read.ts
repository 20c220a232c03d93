/**
 * Lets many who ask for the same at once share one read. Whoever asks while a read is under way gets the one that begins
 * after it, never what was read before they asked: so a crowd costs two reads, and nobody sees less than they would alone.
 */
export function createSharedRead<T>(read: (key: string) => Promise<T>): (key: string) => Promise<T> {
  const underWay = new Map<string, Promise<T>>();
  const waiting = new Map<string, Promise<T>>();

  function begin(key: string): Promise<T> {
    const reading = read(key).finally(() => underWay.delete(key));
    underWay.set(key, reading);
    return reading;
  }

  return (key) => {
    const next = waiting.get(key);
    if (next) return next;
    const current = underWay.get(key);
    if (current === undefined) return begin(key);
    const beginNext = () => {
      waiting.delete(key);
      return begin(key);
    };
    const shared = current.then(beginNext, beginNext);
    waiting.set(key, shared);
    return shared;
  };
}
