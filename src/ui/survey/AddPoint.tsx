/** A new point: its name and three measurements, put into the job only when all of them are there. */
import { useState, type ReactNode } from 'react';
import { addPoint } from '../../core/edit/points.ts';
import type { Vec3 } from '../../core/geometry/vector.ts';
import { ORIGIN } from '../../core/geometry/vector.ts';
import { useWorkspace, workspace } from '../../store/workspace.ts';
import { Command } from '../Command.tsx';
import { LengthField, TextField } from '../fields/Fields.tsx';
import { withAxis } from '../vectors.ts';

const COORDINATES = ['Along', 'Offset, + left', 'Height'] as const;

export function AddPoint(): ReactNode {
  const select = useWorkspace((state) => state.select);
  const count = useWorkspace((state) => state.job.points.length);
  const [name, setName] = useState('');
  const [position, setPosition] = useState<Vec3>(ORIGIN);
  const called = name || `Point ${count + 1}`;

  function showAdded(): void {
    setName('');
    const added = workspace.getState().job.points.at(-1);
    if (added) select({ kind: 'point', id: added.id });
  }

  return (
    <div className="fields">
      <TextField
        label="What was measured"
        mayBeEmpty
        value={name}
        commit={(value) => {
          setName(value);
          return [];
        }}
      />
      <div className="trio">
        {COORDINATES.map((label, axis) => (
          <LengthField
            key={label}
            label={label}
            value={position[axis] ?? 0}
            commit={(value) => {
              setPosition((before) => withAxis(before, axis as 0 | 1 | 2, value));
              return [];
            }}
          />
        ))}
      </div>
      <Command step={`Add ${called}`} run={(job) => addPoint(job, called, position)} onDone={showAdded}>
        Add the point
      </Command>
    </div>
  );
}
