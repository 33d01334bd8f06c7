/**
 * Frame: members in build order, the nodes that hold them, and what they are made of; or what is asked for a cage that is being begun.
 * The lists keep their place and scroll in themselves; the card of what is selected stands under them, so that choosing a row moves no row.
 */
import { Suspense, useState, type ReactNode } from 'react';
import { memberOfTube } from '../../core/job/member-of-tube.ts';
import { bareId } from '../../core/job/reference.ts';
import { useDocument, useEditor } from '../../store/page.ts';
import { Onward, useOpenInWords } from '../kit/Onward.tsx';
import { OPENS_FRAME_AT, readKept } from '../kit/kept.ts';
import { Tabs } from '../kit/Tabs.tsx';
import { MaterialTables, MemberCard, NodeCard, NodeTables, StartForm } from './later.ts';
import { MembersTable } from './MembersTable.tsx';
import '../kit/ui.css';
import './frame.css';

type Part = 'members' | 'nodes' | 'made-of';

export default function FrameStation(): ReactNode {
  const job = useDocument((state) => state.job);
  const selection = useEditor((state) => state.selection);
  const starting = useEditor((state) => state.starting);
  const [part, setPart] = useState<Part>(
    readKept(OPENS_FRAME_AT) === 'feet' ? 'made-of' : selection?.kind === 'node' ? 'nodes' : 'members',
  );
  const [followed, follow] = useState(selection);
  const kind = selection?.kind;

  // The list goes along with what was selected, here or elsewhere.
  if (followed !== selection) {
    follow(selection);
    if (kind === 'node') setPart('nodes');
    else if (kind === 'tube') setPart('members');
  }

  const member = kind === 'tube' ? memberOfTube(job.members, selection?.id ?? '') : undefined;
  const node = kind === 'node' ? job.nodes.find(({ id }) => id === bareId(selection?.id ?? '')) : undefined;
  if (starting !== null) {
    return (
      <Suspense fallback={<Fetching />}>
        <StartForm {...starting} />
      </Suspense>
    );
  }
  return (
    <div className="station">
      <Tabs
        label="Parts of the frame"
        shown={part}
        onShow={setPart}
        tabs={[
          { name: 'members', title: 'Members', count: job.members.length },
          { name: 'nodes', title: 'Nodes', count: job.nodes.length },
          { name: 'made-of', title: 'Tube & dies' },
        ]}
      >
        <Suspense fallback={<Fetching />}>
          {part === 'members' ? <MembersTable /> : part === 'nodes' ? <NodeTables /> : <MaterialTables />}
        </Suspense>
      </Tabs>
      {part === 'made-of' ? null : member ? (
        <Suspense fallback={<Fetching />}>
          <MemberCard key={member.id} member={member} />
        </Suspense>
      ) : node ? (
        <Suspense fallback={<Fetching />}>
          <NodeCard key={node.id} node={node} />
        </Suspense>
      ) : job.members.length + job.nodes.length === 0 ? null : (
        <p className="lead">Choose a tube or a node, here or in the bay, and its measures stand here.</p>
      )}
      {job.members.length > 0 && <OnToChecks />}
    </div>
  );
}

function OnToChecks(): ReactNode {
  const open = useOpenInWords();
  return (
    <Onward to="checks" label="On to the Checks">
      {open === null ? 'The checks found nothing that is open.' : `The checks found ${open}.`}
    </Onward>
  );
}

const Fetching = (): ReactNode => (
  <p className="lead" role="status">
    Being fetched…
  </p>
);
