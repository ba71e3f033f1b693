export interface Place {
  readonly left: number;
  readonly top: number;
}

interface Size {
  readonly width: number;
  readonly height: number;
}

interface Room extends Size {
  readonly left: number;
  readonly top: number;
}

const gap = 6;
const margin = 8;

/** Where a box goes beside another, in pixels of the window: under it where there is room, else over it, and never past the window's edge. */
export function besideOf(room: Room, box: Size, window: Size): Place {
  const under = room.top + room.height + gap;
  const over = room.top - gap - box.height;
  const fitsUnder = under + box.height + margin <= window.height;
  const isUnder = fitsUnder || over < margin;
  const lowest = Math.max(margin, window.height - margin - box.height);
  const top = isUnder ? Math.min(under, lowest) : over;
  const wished = room.left + room.width / 2 - box.width / 2;
  const left = Math.max(margin, Math.min(wished, window.width - margin - box.width));
  return { left, top };
}
