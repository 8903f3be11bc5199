import { WEIGHT } from '../placing/occupied.ts';
import { distance } from '../plane/vector.ts';
import type { Mark } from '../svg/mark.ts';
import { bodyWires } from './content.ts';
import { END_ON, type OnPaper } from './on-paper.ts';
import { jointMark } from './symbols.ts';

/** The wires in their thickness, bends filled, joints dotted. */
export function drawConductors(paper: OnPaper): readonly Mark[] {
  return [...wireMarks(paper), ...bendMarks(paper), ...jointMarks(paper)];
}

/** The boom: a thin chain line, for it is no part of the structure. */
export function drawBoom({ content, point, occupied }: OnPaper): readonly Mark[] {
  if (!content.row) return [];
  const [from, to] = [point(content.row.elements[0]!.middle), point(content.row.elements.at(-1)!.middle)];
  occupied.addLine(from, to, WEIGHT.faint);
  return [{ kind: 'line', from, to, stroke: 'quiet', width: 0.25, dash: [4, 1, 0.6, 1], labels: { boom: 'axis' } }];
}

function wireMarks({ content, point, thickness, occupied }: OnPaper): readonly Mark[] {
  const inBody = bodyWires(content.bodies);
  return content.structure.wires.map((w, wire): Mark => {
    const [from, to] = [point(w.from), point(w.to)];
    const body = inBody.has(wire);
    const look = body ? ({ stroke: 'quiet', width: 0.25 } as const) : ({ stroke: 'ink', width: thickness(w.diameter) } as const);
    const labels = body ? { wire, body: 'true' } : { wire };
    occupied.addLine(from, to, body ? WEIGHT.dimension : WEIGHT.conductor);
    if (distance(from, to) < END_ON)
      return { kind: 'circle', centre: from, radius: Math.max(0.3, look.width / 2), fill: look.stroke, ...look, width: 0.1, labels };
    return { kind: 'line', from, to, ...look, labels };
  });
}

/** Discs that fill the notch outside a bend of thick conductors. */
function bendMarks({ content, node, thickness }: OnPaper): readonly Mark[] {
  return content.conductors.flatMap(({ pieces, closed }) => {
    const radius = thickness(pieces[0]!.diameter) / 2;
    const bent = closed ? pieces : pieces.slice(1);
    return radius < 0.3
      ? []
      : bent.map((p): Mark => ({ kind: 'circle', centre: node(p.ends[0]), radius, fill: 'ink', stroke: 'ink', width: 0 }));
  });
}

function jointMarks({ content, node, thickness }: OnPaper): readonly Mark[] {
  const inBody = bodyWires(content.bodies);
  const { spans } = content.layout;
  return content.joints.flatMap((n) => {
    const here = spans.filter((s) => s.from === n || s.to === n);
    if (here.every((s) => inBody.has(s.wire))) return [];
    return [jointMark(node(n), thickness(2 * Math.max(...here.map((s) => s.radius))))];
  });
}
