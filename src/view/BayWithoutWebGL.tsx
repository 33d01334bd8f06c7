/** Stands in the bay's place where the browser cannot draw in 3D: the work itself goes on. */
export function BayWithoutWebGL() {
  return (
    <section className="bay bay-missing" aria-label="3D view of the frame">
      <div role="note">
        <h2>No 3D view here</h2>
        <p>
          This browser cannot draw in 3D: WebGL 2 is missing or switched off. Everything else works: tables, checks,
          tube data and downloads.
        </p>
        <p>
          To see the frame, switch on hardware acceleration in the browser’s settings, or open the job in another
          browser.
        </p>
      </div>
    </section>
  );
}

/** True where the bay can be drawn. */
export function canDraw(): boolean {
  const context = document.createElement('canvas').getContext('webgl2');
  // Browsers allow few contexts at once: this one is given back.
  context?.getExtension('WEBGL_lose_context')?.loseContext();
  return context !== null;
}
