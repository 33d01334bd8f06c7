/** The worker that reads a scan; it is sent one file, and is ended by the page. */
import { readFile, type ScanAsk } from './scan-work.ts';

addEventListener('message', ({ data }: MessageEvent<ScanAsk>) => {
  void readFile(data, (said) => {
    const handed =
      said.kind === 'came' && said.came.ok ? [said.came.data.positions.buffer, said.came.data.triangles.buffer] : [];
    postMessage(said, { transfer: handed });
  });
});
