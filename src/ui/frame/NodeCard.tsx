/** The selected node: how its place is given, where that is in the car, and which members run through it. */
import { shownName } from '../../core/job/shown.ts';
import { lazy, Suspense, type ReactNode } from 'react';
import { removeNode, renameNode } from '../../core/edit/nodes.ts';
import { tubesOfMember } from '../../core/job/member-of-tube.ts';
import { bareId, isPrimed, primed } from '../../core/job/reference.ts';
import type { FrameNode } from '../../core/job/kinds/node.ts';
import { giveAs } from '../../core/shape/given-as.ts';
import { wayOf, type Way } from '../../core/shape/ways.ts';
import { jobDocument, useDocument, useEditor } from '../../store/page.ts';
import { Command } from '../kit/Command.tsx';
import { TextField } from '../fields/Fields.tsx';
import { CAR_AXES } from '../kit/vectors.ts';
import { JobSelect } from '../fields/JobSelect.tsx';
import { jobEdit } from '../fields/jobEdit.ts';
import { Length } from '../fields/Readings.tsx';
import { wayChoices } from './choices.ts';
import { Joint } from './Joint.tsx';
import { PlaceFields } from './PlaceFields.tsx';
import { PlacePicture } from './PlacePicture.tsx';

const Gussets = lazy(() => import('./Gussets.tsx'));

export function NodeCard({ node }: { node: FrameNode }): ReactNode {
  const job = useDocument((state) => state.job);
  const at = useDocument((state) => state.derived.nodes.get(node.id));
  const select = useEditor((state) => state.select);
  const mirrored = useEditor((state) => state.selection?.kind === 'node' && isPrimed(state.selection.id));
  const members = job.members.filter((member) => member.path.some((reference) => bareId(reference) === node.id));
  return (
    <article className="card chosen-card" aria-label={`Node ${shownName(node.name)}`}>
      <header className="card-head">
        <h2>{shownName(node.name)}</h2>
        {at && (
          <dl className="place">
            {CAR_AXES.map(({ header, means }, axis) => (
              <div key={header}>
                <dt>
                  {header} <span className="table-means">{means}</span>
                </dt>
                <dd>
                  <Length mm={at[axis] ?? 0} withUnit />
                </dd>
              </div>
            ))}
          </dl>
        )}
      </header>
      <div className="fields fields-two">
        <TextField
          label="Name"
          value={node.name}
          {...jobEdit<string>('Rename a node', (before, name) => renameNode(before, node.id, name))}
        />
        <JobSelect
          label="Placed"
          value={wayOf(node.at)}
          choices={wayChoices}
          step={`Place ${node.name} another way`}
          change={(before, way) => giveAs(before, jobDocument.getState().derived, node.id, way as Way)}
        />
      </div>
      {mirrored && <p className="small">Its mirror image is chosen: both are this one node, and move together.</p>}
      <PlacePicture way={wayOf(node.at)} />
      <PlaceFields node={node} />
      <Joint node={mirrored ? primed(node.id) : node.id} />
      <Suspense>
        <Gussets node={mirrored ? primed(node.id) : node.id} />
      </Suspense>
      <h4>Members with it on their path</h4>
      {members.length === 0 ? (
        <p className="small">None yet.</p>
      ) : (
        <ul className="chips">
          {members.map((member) => (
            <li key={member.id}>
              <button
                type="button"
                className="chip"
                onClick={() => select({ kind: 'tube', id: tubesOfMember(member)[0]! })}
              >
                {shownName(member.name)}
              </button>
            </li>
          ))}
        </ul>
      )}
      <Command quiet destroys={node.id} step={`Delete ${node.name}`} run={(before) => removeNode(before, node.id)}>
        Delete the node
      </Command>
    </article>
  );
}
