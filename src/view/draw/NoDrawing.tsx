/** Where the browser cannot draw in 3D: says so to whoever asks to draw a tube there, and what does it in words. */
import { useEffect } from 'react';
import { editor } from '../../store/page.ts';

export function NoDrawing() {
  useEffect(() => {
    const { draw, say } = editor.getState();
    draw(null);
    say({
      message:
        'A tube is drawn in the bay, which this browser cannot show: “Member by its nodes” runs it from node to node.',
      damaged: [],
    });
  }, []);
  return null;
}
