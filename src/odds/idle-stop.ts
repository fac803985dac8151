/** Stops a worker that nobody has asked for some time, so that it gives its memory back. */
interface IdleStop {
  readonly busy: () => void;
  readonly idle: () => void;
}

export function idleStop(seconds: number, stop: () => Promise<void>): IdleStop {
  let timer: NodeJS.Timeout | undefined;
  return {
    busy: () => clearTimeout(timer),
    idle: () => {
      clearTimeout(timer);
      timer = setTimeout(() => void stop(), seconds * 1000).unref();
    },
  };
}
