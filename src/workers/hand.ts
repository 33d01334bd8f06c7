/** What a request is sent to, and answers come from: a worker, or in a test what stands in for one. */
export interface Hand<Request, Answer> {
  send(request: Request): void;
  /** Its answers from now on; `failed` when the worker itself fails, or could not be started. */
  listen(heard: (answer: Answer) => void, failed: (why: string) => void): void;
  end(): void;
}

/** The worker's side of the page: whoever listened before hears no more once another listens, or once it is ended. */
export function handOf<Request, Answer>(worker: Worker): Hand<Request, Answer> {
  let listening = new AbortController();
  return {
    send: (request) => worker.postMessage(request),
    listen(heard, failed) {
      listening.abort();
      listening = new AbortController();
      const { signal } = listening;
      worker.addEventListener('message', ({ data }: MessageEvent<Answer>) => heard(data), { signal });
      worker.addEventListener(
        'error',
        (event) => {
          event.preventDefault();
          failed(event.message || 'The part of the program that makes it could not be started.');
        },
        { signal },
      );
    },
    end() {
      listening.abort();
      worker.terminate();
    },
  };
}
