/**
 * Every finding's sentence: what is wrong, where, and what would mend it, in the trade's words; lengths in the job's unit.
 * One row a kind, so that the compiler finds the one that has none.
 */
import { FITS } from '../checks/misfit.ts';
import type { Finding, FirstPullOnly, Source } from '../checks/types.ts';
import { toDegrees, toRadians, type Radians } from '../geometry/angle.ts';
import { ROUNDING } from '../geometry/tolerance.ts';
import { SEARCHED_BENDS } from '../solve/bend-order.ts';
import { formatAngle } from '../units/angle.ts';
import { nodeName, pointName, tubeName } from '../solve/names.ts';
import { listed } from './lists.ts';
import type { Frame, SolvedTube } from '../solve/types.ts';
import type { Unborne } from '../springback/pull-advice.ts';
import { shownLengths } from './fitting.ts';
import { whyUnmitred } from './ends.ts';
import { whyNoGusset } from './gussets.ts';
import { comparedLength } from './lengths.ts';
import { GO_ON, mendInWords, pullFigure, whyInWords } from './pulls.ts';
import { looseInWords, offInWords } from './survey.ts';
import { trimName } from './trim.ts';
import { moveInWords } from './moves.ts';
import { impossibleInWords, unusedInWords } from './reading-findings.ts';
import { noStickInWords } from './stock.ts';
import { offFootInWords } from './feet-findings.ts';
import { seatLooseInWords, seatMissedInWords } from './seat-findings.ts';
import { noOrderInWords, orderInWords, swingMendInWords, troubleInWords } from './rehearsal.ts';

/** The finding in words; `frame` is the one it was found in. */
export function findingInWords(finding: Finding, frame: Frame): string {
  const write = WORDS[finding.id] as (finding: Finding, around: Around) => string;
  return write(finding, aroundOf(finding, frame));
}

/** What it rests on: "common practice", or a rule with body, edition and article. */
export function sourceInWords({ source, envelope }: Finding, { job }: Frame): string {
  if (source === 'envelope-gap')
    return `gap set for ${job.envelopes.find(({ id }) => id === envelope)!.name} in this job`;
  return SOURCES[source];
}

const SOURCES: Readonly<Record<Exclude<Source, 'envelope-gap'>, string>> = {
  practice: 'common practice',
  'least-radius':
    'CLR at least 3 x OD: FIA Appendix J art. 253-8 (as quoted, 2009); Motorsport UK NCR 2026 ch. 7 app. 3 art. 20.3; Formula SAE 2026 F.5.2',
  'one-piece':
    'hoops of one piece: Motorsport UK NCR 2026 ch. 7 app. 3 (rollbars, no joints); Formula SAE 2026 V1.0 (main hoop)',
  pulls: 'pulls logged in this job',
  'bender-room': 'the bender and its room as set up in this job',
  'kept-order': 'the order kept in this job',
  'torch-gap': 'room for the torch as set in this job',
  'torch-room': 'torch room above a joint as set in this job',
  door: 'the way across the door, measured or typed in this job',
  'least-gap': 'least gap set for this place in this job',
  rack: 'sticks on the rack as listed in this job',
};

/** What a sentence may name beside the numbers of its finding. */
interface Around {
  readonly tube: SolvedTube;
  readonly die: string;
  readonly frame: Frame;
  readonly show: (mm: number) => string;
  readonly nameOf: (tube: string) => string;
}

const aroundOf = (finding: Finding, frame: Frame): Around => {
  const tube = frame.byId.get(finding.tube)!;
  return {
    tube,
    die: tube.die?.name ?? '',
    frame,
    show: (mm) => comparedLength(mm, frame.job.lengthUnit),
    nameOf: (id) => tubeName(frame, id),
  };
};

const gussetName = ({ job }: Frame, gusset: string): string => job.gussets.find(({ id }) => id === gusset)!.name;

const degrees = (angle: Radians): string => `${toDegrees(angle).toFixed(1)}°`;

const atEnd = ({ name }: SolvedTube, { end }: Finding): string => `${name}, end ${end}`;

const bendsInWords = (count: number): string => (count === 0 ? 'no bend' : count === 1 ? '1 bend' : `${count} bends`);

/** Radians. A run tube that lies otherwise by less is not worth a word: half a degree opens an inch and a half of tube by a third of a mm. */
const TURNED: Radians = toRadians(0.5);

type Writer<Id extends Finding['id']> = (finding: Extract<Finding, { readonly id: Id }>, around: Around) => string;

const overlap = (straight: number, where: string, { tube, show }: Around): string =>
  `${tube.name}: the straight ${where} comes out ${show(straight)}. Move the corners ${show(-straight)} or more apart, or take a die with a smaller radius.`;

const firstPullOnly =
  (why: Exclude<Unborne, 'nothing-known'>) =>
  ({ bend, bends, firstPull, net, mendNear, isLaidOutByIt }: FirstPullOnly, { tube, die }: Around): string => {
    const { pullLaw, section } = tube;
    const pull = `${pullFigure({ pullTo: firstPull })} for ${degrees(net)}`;
    const known =
      bends.length === 1
        ? `For bend ${bend} only a first pull is known, ${pull}`
        : `For bends ${bends.join(', ')} only a first pull is known, for bend ${bend} ${pull}`;
    const laid = isLaidOutByIt
      ? ' Its radius is laid out by that first pull too: its marks move once the pulls say more.'
      : '';
    return `${tube.name}: ${whyInWords(why, pullLaw)} (${die}, ${section.name}). ${known}: ${GO_ON}. ${mendInWords(why, pullLaw, mendNear)}${laid}`;
  };

/** mm. Less is not worth a word. */
const UNSEEN = 0.1;

const ontoRunTube = 'Move the node along the tube if the rule book wants joints clear of bends.';

const WORDS: { readonly [Id in Finding['id']]: Writer<Id> } = {
  'bend/overlap': ({ bend, straight }, around) => overlap(straight, `between bends ${bend} and ${bend + 1}`, around),
  'bend/past-end': ({ bend, side, straight }, around) => overlap(straight, `${side} bend ${bend}`, around),
  'bend/short-straight': ({ bend, straight, least }, { tube, die, show }) =>
    `${tube.name}: ${show(straight)} of straight between bends ${bend} and ${bend + 1}; ${die} needs ${show(least)} to clamp on. Move the corners ${show(least - straight)} further apart.`,
  'bend/beyond-die': ({ bend, angle, greatest }, { tube, die }) =>
    `${tube.name}: bend ${bend} turns ${degrees(angle)}; ${die} goes to ${greatest}°. Split the turn over two bends.`,
  'bend/angle-not-kept': ({ node, turns, angle }, { tube, frame }) =>
    `${tube.name}: the bend at ${nodeName(frame.job, node)} is kept at ${formatAngle(angle, 2)}°, and turns ${formatAngle(turns, 2)}° now, since the places about it have moved. In the Frame, make it ${formatAngle(angle, 2)}° again, or let the angle go.`,
  'bend/wrong-die': ({ outerDiameter, dieTakes }, { tube, die, show }) =>
    `${tube.name}: ${tube.section.name} is ${show(outerDiameter)} over the outside, ${die} takes ${show(dieTakes)}. Choose a die for this tube.`,
  'bend/tight-radius': ({ radius, least }, { tube, show }) =>
    `${tube.name}: centreline radius ${show(radius)} is under 3 x outer diameter (${show(least)}). Many rule books ask for that as the least.`,
  'bend/short-tail': ({ bend, end, tail, grips, missing, otherEndHolds }, { tube, die, show }) =>
    `${tube.name}: ${show(tail)} of tail behind bend ${bend}; ${die} grips ${show(grips)}. The length to cut has ${show(missing)} more on end ${end} for the clamp: saw it off after bending${otherEndHolds ? `, or bend the tube from end ${end}` : ''}.`,
  'bend/clamp-off-tube': ({ bend, end, missing, otherEndIsBehind }, { tube, show }) =>
    `${tube.name}: the clamp mark of bend ${bend} lies ${show(missing)} ${end === 'A' ? 'before' : 'beyond'} the finished end ${end}. The length to cut has that much more there: saw it off after bending${otherEndIsBehind ? `, or bend the tube from end ${end === 'A' ? 'B' : 'A'}` : ''}.`,
  'bend/order-outdated': ({ bends }, { tube }) =>
    `${tube.name}: the order of bending that this job keeps for it ${bends === 0 ? 'is for a bent tube, and it is straight now' : `does not hold each of its ${bends} bends once`}. It is not used. In the Shop, drop it or keep another.`,
  'bend/many-bends': ({ count, isSearched }, { tube }) =>
    isSearched
      ? `${tube.name} has ${count} bends, more than most hoops. Each adds its own error to all that follow, and a rule book may set a greatest number: look yours up.`
      : `${tube.name} has ${count} bends. No order of bending is searched for more than ${SEARCHED_BENDS}: go through its swing by hand, or make it of two tubes.`,
  'stock/longer-than-stick': ({ length, grip, stick, mend, otherEnd }, { tube, show }) => {
    const blank = `${tube.name}: the blank is ${show(length)} long${grip > ROUNDING ? `, ${show(grip)} of it for the grip` : ''}; sticks of ${tube.section.name} are ${show(stick)}, ${show(length - stick)} too short.`;
    const mends = {
      'other-end-in-front': `Bent from end ${otherEnd} it needs less grip and fits.`,
      'longer-stick': 'A hoop is made of one piece, without a joint: get a longer stick.',
      joint: 'Get a longer stick, or make it of two tubes with a joint that your rule book allows.',
    };
    return `${blank} ${mends[mend]}`;
  },
  'stock/no-stick': noStickInWords,
  'bend/pulls-disagree': firstPullOnly('disagree'),
  'bend/slack-or-spring': firstPullOnly('slack-or-spring'),
  'bend/beyond-pulls': firstPullOnly('too-far'),
  'bend/coarse-scale': firstPullOnly('coarse-scale'),
  'bend/radius-opens': ({ off, end }, { tube, die, show }) =>
    `${tube.name}: by its pulls ${die} bends to a larger radius than it is laid out with; end ${end} comes out ${show(off)} from its place. Set the die to take its radius from the pulls.`,
  'bend/order-matters': ({ bend, front, trouble, order }, { tube }) =>
    `${tube.name}: bent one after the other with end ${front} in front, bend ${bend} ${troubleInWords(trouble)}. Take ${orderInWords(order)}.`,
  'bend/plain-order-touches': ({ bend, front, trouble, mend }, { tube }) =>
    `${tube.name}: bent one after the other with end ${front} in front, bend ${bend} ${troubleInWords(trouble)}. No other order is searched for so many bends. ${swingMendInWords(mend)}`,
  'bend/no-free-order': ({ reason, mend }, { tube }) =>
    `${tube.name}: ${noOrderInWords(reason)}. ${swingMendInWords(mend)}`,
  'end/meets-nothing': (finding, { tube, nameOf }) => {
    const { sees } = finding;
    const meets = `${atEnd(tube, finding)} meets no tube`;
    if (sees === null) return `${meets} and is cut square. Put it on a tube, or give it a plate.`;
    if (sees === 'own-twin')
      return `${meets} but its own mirror image, and is cut square. For a mitre on the centre plane, mitre it with that image.`;
    return `${meets} built before it, and is cut square; ${nameOf(sees.later)} ends there but is built later. If this is a foot, give it a plate; else move this member down the build order, or name what it is coped to.`;
  },
  'end/plate-along-tube': (finding, { tube }) =>
    `${atEnd(tube, finding)}: the plate lies along the tube and never cuts it. Give the plate another slope.`,
  'end/cutter-misses': (finding, { tube, nameOf }) =>
    `${atEnd(tube, finding)}: the cope against ${nameOf(finding.runTube)} does not reach this tube. Move the node onto it, or take it out of the end's list.`,
  'mitre/cannot': (finding, { tube, nameOf }) =>
    `${atEnd(tube, finding)} cannot be mitred and is cut square: ${whyUnmitred(finding.why, nameOf(finding.mate))}, or give the end another fit.`,
  'mitre/one-sided': (finding, { tube, nameOf }) =>
    `${atEnd(tube, finding)} is mitred with ${nameOf(finding.mate)}, whose end is not mitred with it. Set that end to a mitre too.`,
  'foot/upside-down': (finding, { tube }) =>
    `${atEnd(tube, finding)}: its foot is turned away from the tube. Turn it round, so that its upper face looks along the tube.`,
  'foot/over-edge': (finding, { tube, show }) =>
    `${atEnd(tube, finding)} stands ${show(finding.over)} past the edge of its foot. One of ${finding.takes.map(show).join(' by ')}, along and across, would just take it.`,
  'foot/in-bend': (finding, { tube, show }) =>
    `${atEnd(tube, finding)} runs ${show(finding.over)} into the bend of its plate. Move the kink that much further from the middle, or bend the plate less.`,
  'foot/over-hole': (finding, { tube, show }) =>
    `${atEnd(tube, finding)} stands over hole ${finding.hole} of its foot, ${show(finding.by)} past the hole's edge. Move the hole that much further out, and as far again as its bolt's head needs.`,
  'piece/cutter-misses': (finding, { tube, nameOf }) =>
    `${atEnd(tube, finding)}: ${nameOf(finding.runTube)}, which is to run through there, does not reach this bar. Move one onto the other, or do not cut the bar there.`,
  'piece/strip-holds': (finding, { tube, nameOf, show }) =>
    `${atEnd(tube, finding)}: ${nameOf(finding.runTube)} does not cut the bar right through; a strip of its wall up to ${show(finding.thickness)} thick passes by, too thick to file off. Move the two axes nearer each other, let the thinner of the two be the one that is cut, or split the bar there and put the node on the axis of ${nameOf(finding.runTube)}.`,
  'piece/strip-to-file': (finding, { tube, nameOf, show }) =>
    `${atEnd(tube, finding)}: where ${nameOf(finding.runTube)} runs through, a strip up to ${show(finding.thickness)} thick stays, since the two axes do not quite meet. File it off.`,
  'piece/hoop': (finding, { tube, nameOf }) =>
    `${tube.member.name} is cut where ${nameOf(finding.runTube)} runs through. Rule books ask for a hoop of one piece: let the hoop run through.`,
  'end/wider-than-run': (finding, { tube }) =>
    `${atEnd(tube, finding)}: part of this tube's wall passes by what it is coped to. Move the node nearer the run tube's axis, or cope the other tube to this one.`,
  'end/cut-through': (finding, { tube, show }) =>
    `${atEnd(tube, finding)}: the cut is ${show(finding.throat)} deep and the tube ${show(finding.developedLength)} long, so it runs out at the other end. Move the node, or give the end another fit.`,
  'end/meets-run-again': (finding, { tube, nameOf, show }) =>
    `${atEnd(tube, finding)}: past its cope this tube meets ${nameOf(finding.runTube)} again, and its wall stands ${show(finding.depth)} deep in it there. No cope at this end takes that away: lead the tube clear, or end it where they meet.`,
  'end/cut-elsewhere': (finding, { tube, nameOf, show }) =>
    `${atEnd(tube, finding)}: ${nameOf(finding.runTube)} passes this node ${show(finding.by)} off, and cuts the tube ${show(finding.away)} from it, more than half the tube away. Move the node onto it, or take it out of the end's list.`,
  'end/cope-in-own-bend': (finding, { tube, show }) =>
    `${atEnd(tube, finding)}: the cope is ${show(finding.throat)} deep and the straight there ${show(finding.straight)}, so the cut runs into this tube's own bend. Fit it by hand, or move the bend away.`,
  'joint/in-bend': (finding, { tube, nameOf }) =>
    `${atEnd(tube, finding)} lands in bend ${finding.runTubeBend} of ${nameOf(finding.runTube)}. The cope is cut for it; a saw set for straight tube does not fit there. ${ontoRunTube}`,
  'joint/near-bend': (finding, { tube, nameOf, show }) =>
    `${atEnd(tube, finding)} lands ${show(finding.distance)} from bend ${finding.runTubeBend} of ${nameOf(finding.runTube)}, less than one diameter (${show(finding.reach)}). The cope is cut for it; a saw set for straight tube does not fit there. ${ontoRunTube}`,
  'joint/off-run-end': (finding, { tube, nameOf, show }) =>
    `${atEnd(tube, finding)}: its saddle runs ${show(finding.over)} past end ${finding.runTubeEnd} of ${nameOf(finding.runTube)}, where there is nothing to weld to. Move the node along ${nameOf(finding.runTube)} by that much or more.`,
  'joint/out-of-line': (finding, { tube, nameOf, show }) => {
    const { mate, mateEnd, angle, offset, through } = finding;
    const out = `${degrees(angle)}${offset > UNSEEN ? ` and ${show(offset)} aside` : ''}`;
    const where = through === null ? '' : ` through ${nameOf(through)}`;
    return `${atEnd(tube, finding)} and ${nameOf(mate)}, end ${mateEnd}, run on as one line${where}, but are ${out} out of it. Draw them as one bar in pieces, or move a node.`;
  },
  'member/twin-in-same-place': (_, { tube }) =>
    `${tube.member.name} is its own mirror image, which lies in the same place and would be cut twice. Turn its mirror off.`,
  'clearance/too-close': ({ envelope, distance, gap }, { tube, frame, show }) => {
    const { name } = frame.job.envelopes.find(({ id }) => id === envelope)!;
    const how = distance < 0 ? `goes ${show(-distance)} into` : `is ${show(distance)} from`;
    return `${tube.name} ${how} ${name}; ${show(gap)} is asked for. Move the tube ${show(gap - distance)} away, or the seat.`;
  },
  'gap/runs-through': ({ other, distance, move }, { tube, nameOf, show }) =>
    `${tube.name} runs ${show(-distance)} into ${nameOf(other)}, and neither is coped to the other. Cope ${tube.name} to ${nameOf(other)}, or move it ${moveInWords(move, show)}.`,
  'gap/no-room-for-torch': ({ other, distance, torchGap, move }, { tube, nameOf, show }) =>
    `${tube.name} ${distance > 0 ? `passes ${show(distance)} from` : 'touches'} ${nameOf(other)}; a torch wants ${show(torchGap)}. Move it ${moveInWords(move, show)}, or cope it to ${nameOf(other)}.`,
  'point/guessed': ({ point, tubes }, { tube, frame }) => {
    const { name } = frame.job.points.find(({ id }) => id === point)!;
    return `${goBy(tube.name, tubes)} ${name}, which is a guess. Measure it, ${CONFIRM}`;
  },
  'node/guessed': ({ node, tubes }, { tube, frame }) =>
    `${goBy(tube.name, tubes)} ${nodeName(frame.job, node)}, whose place is a guess. Say where it stands, ${CONFIRM}`,
  'point/stand-in': ({ point, tubes }, { tube, frame }) =>
    `${goBy(tube.name, tubes)} ${pointName(frame.job, point)}, which was measured on a stand-in. Measure it on the real one once that is there.`,
  'point/not-fixed': ({ point, directions, tubes }, { tube, frame }) =>
    `${goBy(tube.name, tubes)} ${pointName(frame.job, point)}. ${looseInWords(pointName(frame.job, point), directions)}: it stays where it was guessed. Measure that.`,
  'point/reading-off': ({ measurement, fits, tubes }, { tube, frame: { job } }) =>
    `${goBy(tube.name, tubes)} a point where readings disagree. ${offInWords(job, measurement, fits)} Measure it again.`,
  'gap/near-trim': ({ trim, distance, wanted, move }, { tube, frame, show }) => {
    const name = trimName(frame.job, trim);
    const how = distance < 0 ? `runs ${show(-distance)} into` : distance > 0 ? `is ${show(distance)} from` : 'touches';
    return `${tube.name} ${how} ${name}; ${show(wanted)} is wanted there. Move the tube ${moveInWords(move, show)}.`;
  },
  'fit/no-air': (finding, { tube, frame }) => {
    const { node, trim, air, room, lowerBy, boxes } = finding;
    const { atLeast, atMost } = shownLengths(frame.job.lengthUnit);
    const where = node === undefined ? atEnd(tube, finding) : nodeName(frame.job, node);
    const name = trimName(frame.job, trim);
    const has =
      air < 0 ? `stands ${atLeast(-air)} higher than ${name}` : `has ${atMost(air)} of air above it, up to ${name}`;
    const gives =
      boxes === null ? 'no foot is a box that would give it' : `the boxes of the feet give ${atMost(boxes)}`;
    return `${where} ${has}; a torch wants ${atMost(room)}. To weld it the cage has to stand ${atLeast(lowerBy)} lower, and ${gives}. Take boxes as high as that, make holes in the floor, or lead the tubes lower there.`;
  },
  'fit/wider-than-door': ({ width, thickness, way }, { tube, frame }) => {
    const { atLeast, atMost } = shownLengths(frame.job.lengthUnit);
    return `${tube.name}, laid flat, wants an opening ${atLeast(width)} wide and ${atLeast(thickness)} thick; the longest straight way across the door is ${atMost(way)}. Bring it in by another opening; turned as it comes in it may go through, which is not worked out.`;
  },
  'made/other-bends': ({ was, now }, { tube }) =>
    `${tube.name} was made with ${bendsInWords(was)} and is drawn with ${bendsInWords(now)} now: it stands in the frame as drawn. Draw it as it was made, or take its bend run out and make it anew.`,
  'made/off-node': ({ node, distance, others }, { tube, frame, nameOf, show }) => {
    const stays =
      others.length === 0
        ? ''
        : `, which ${listed(others.map(nameOf))} still ${others.length === 1 ? 'goes' : 'go'} by`;
    const mend = others.length === 0 ? 'Nothing else goes by it.' : `Place that end on ${tube.name} to have it follow.`;
    return `${tube.name} ${tube.held === null ? 'stands as it was built' : 'lies as it was cut'}, ${show(distance)} from ${nodeName(frame.job, node)}${stays}. ${mend}`;
  },
  'made/off-foot': (finding, { tube, frame, show }) =>
    `${atEnd(tube, finding)}, ${offFootInWords(finding, frame.job, show)}`,
  'made/end-misfit': (finding, { tube, show }) => {
    const { long, gap, left, turned } = finding;
    const lies = turned !== null && turned > TURNED ? `; the tube that it meets lies ${degrees(turned)} otherwise` : '';
    const over =
      left > 0
        ? left + long > FITS
          ? `trim off ${show(left + long)} there, and not the ${show(left)} that was left for it`
          : `of the ${show(left)} that was left on it nothing is to be trimmed off`
        : long > FITS
          ? `it is ${show(long)} too long: grind that off where it touches`
          : '';
    const open = gap > FITS ? `${over === '' ? 'it' : 'it then'} leaves a gap of up to ${show(gap)}` : '';
    return `${atEnd(tube, finding)}, is cut for the frame as it was${lies}; ${listed([over, open].filter((part) => part !== ''))}.`;
  },
  'made/sawn-short': (finding, { tube, show }) =>
    `${atEnd(tube, finding)}: the blank was sawn ${show(finding.missing)} short of what the frame wants there now. Expect a gap of so much, or cut another blank.`,
  'made/seat-missed': (finding, { tube, show }) => `${tube.name}: ${seatMissedInWords(finding, show)}`,
  'made/seat-loose': (finding, { tube, show }) => `${tube.name}: ${seatLooseInWords(finding, show)}`,
  'made/readings-unused': (finding, { tube }) => `${tube.name}: ${unusedInWords(finding)}`,
  'made/reading-impossible': (finding, { tube, frame }) =>
    `${tube.name}: ${impossibleInWords(finding, frame.job.lengthUnit)}`,
  'gusset/cannot': ({ gusset, isImage, no }, { frame, nameOf }) =>
    `${isImage ? 'The mirror image of ' : ''}${gussetName(frame, gusset)} cannot be made: ${whyNoGusset(no, frame.job.lengthUnit, nameOf)}`,
  'gusset/thin': ({ gusset, thickness, least }, { frame, show }) =>
    `${gussetName(frame, gusset)} is ${show(thickness)} thick; a gusset is usually as thick as the thicker wall that it is welded to, and no thinner than 1 mm: ${show(least)} or more.`,
  'gusset/in-tube': ({ gusset, into, depth }, { frame, nameOf, show }) =>
    `The corner of ${gussetName(frame, gusset)} lies ${show(depth)} inside ${nameOf(into)}, which ends or passes there too. Give it more relief, until the corner is clear of that tube.`,
  'gusset/runs-into': ({ gusset, into, depth }, { frame, nameOf, show }) =>
    `${gussetName(frame, gusset)} runs ${show(depth)} into ${nameOf(into)}. Make its legs shorter, or put it in another corner.`,
  'gusset/leg-before-tube': ({ gusset, along, before }, { frame, nameOf, show }) =>
    `${gussetName(frame, gusset)}: its leg begins ${show(before)} before ${nameOf(along)} does, where there is nothing to weld it to. Give it that much relief, or let the tube run on past the node.`,
  'gusset/twice': ({ gusset, beside }, { frame }) =>
    `${gussetName(frame, gusset)} stands in the same corner as ${gussetName(frame, beside)}. Delete one of them.`,
  'gusset/leg-length': ({ gusset, along, leg, least, greatest }, { frame, nameOf, show }) =>
    `${gussetName(frame, gusset)}: its leg along ${nameOf(along)} is ${show(leg)}; usual are two to four diameters of the tube, ${show(least)} to ${show(greatest)}.`,
};

const CONFIRM = 'or confirm it in Survey, before anything is cut.';

/** "Main hoop and 3 other tubes go by". */
const goBy = (name: string, tubes: number): string =>
  `${name} ${tubes === 1 ? 'goes' : tubes === 2 ? 'and another tube go' : `and ${tubes - 1} other tubes go`} by`;
