/** A job file dropped anywhere on the window is opened; while it hovers, the window says so. */
import { useEffect, useState } from 'react';
import type { ReactNode } from 'react';
import { openFile } from './files.ts';

const carriesFile = (event: DragEvent): boolean => event.dataTransfer?.types.includes('Files') ?? false;

export function DropZone(): ReactNode {
  const [hovering, setHovering] = useState(false);
  useEffect(() => {
    const hold = (event: DragEvent): void => {
      if (!carriesFile(event)) return;
      // What a part of the page takes for itself is no job.
      setHovering(!event.defaultPrevented);
      event.preventDefault();
    };
    const leave = (event: DragEvent): void => {
      if (event.relatedTarget === null) setHovering(false);
    };
    const drop = (event: DragEvent): void => {
      if (!carriesFile(event)) return;
      setHovering(false);
      if (event.defaultPrevented) return;
      event.preventDefault();
      const file = event.dataTransfer?.files[0];
      if (file) void openFile(file);
    };
    window.addEventListener('dragover', hold);
    window.addEventListener('dragleave', leave);
    window.addEventListener('drop', drop);
    return () => {
      window.removeEventListener('dragover', hold);
      window.removeEventListener('dragleave', leave);
      window.removeEventListener('drop', drop);
    };
  }, []);
  return hovering ? (
    <div className="drop-zone" aria-hidden="true">
      <p>Drop the job file to open it</p>
    </div>
  ) : null;
}
