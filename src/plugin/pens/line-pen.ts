import { createProgram, type View } from "./program.ts";

// Each segment is a strip of two triangles, widened on the screen: half a width and half a pixel to fade the edge.
const vertex = `#version 300 es
layout(location = 0) in vec2 corner; // 0 or 1 along, -1 or 1 across
layout(location = 1) in vec4 segment;
uniform mat4 matrix;
uniform vec2 halfView;
uniform float width;
out float across;
out float along_px;
void main() {
  vec4 from = matrix * vec4(segment.xy, 0.0, 1.0);
  vec4 to = matrix * vec4(segment.zw, 0.0, 1.0);
  vec2 along = to.xy / to.w * halfView - from.xy / from.w * halfView;
  float size = length(along);
  vec2 d = size > 0.0 ? along / size : vec2(1.0, 0.0);
  float reach = width * 0.5 + 0.5;
  vec2 push = vec2(-d.y, d.x) * corner.y * reach + d * (corner.x * 2.0 - 1.0) * width * 0.5;
  vec4 at = corner.x < 0.5 ? from : to;
  gl_Position = vec4(at.xy + push / halfView * at.w, 0.0, at.w);
  across = corner.y * reach;
  along_px = corner.x * size;
}`;

const whole = `#version 300 es
precision highp float;
in float across;
uniform vec3 colour;
uniform float width;
out vec4 result;
void main() {
  float alpha = clamp(width * 0.5 + 0.5 - abs(across), 0.0, 1.0);
  result = vec4(colour * alpha, alpha);
}`;

const dashed = `#version 300 es
precision highp float;
in float across;
in float along_px;
uniform vec2 dash; // pixels drawn and left out
uniform vec3 colour;
uniform float width;
out vec4 result;
void main() {
  float drawn = 1.0 - step(dash.x, mod(along_px, dash.x + dash.y));
  float alpha = drawn * clamp(width * 0.5 + 0.5 - abs(across), 0.0, 1.0);
  result = vec4(colour * alpha, alpha);
}`;

/** Where the vertex shader has its inputs: the same in both programs. */
const [cornerAt, segmentAt] = [0, 1];
const cornersOfSegment = [0, -1, 0, 1, 1, -1, 1, 1] as const;
/** Two triangles of four corners. */
const indexOfCorner = [0, 1, 2, 2, 1, 3] as const;
const numbersPerCorner = 6;
const bytesPerNumber = 4;

interface Held {
  readonly buffer: WebGLBuffer;
  readonly index: WebGLBuffer;
  readonly vertices: WebGLVertexArrayObject;
  count: number;
  /** How many segments the index has room for. */
  room: number;
}

export interface Stroke {
  readonly colour: readonly [number, number, number];
  readonly width_px: number;
  /** Pixels drawn and pixels left out; a whole line without it. */
  readonly dash_px?: readonly [drawn: number, left: number];
  /** Only some of the segments; all without it. */
  readonly first?: number;
  readonly count?: number;
}

/** Draws straight segments of one width, held by name on the graphics side. */
export interface LinePen {
  /** from x, from y, to x, to y of every segment. */
  upload(name: string, segments: Float32Array): void;
  draw(name: string, view: View, stroke: Stroke): void;
  dispose(): void;
}

/** A line pen for a drawing context. */
export function createLinePen(gl: WebGL2RenderingContext): LinePen {
  const programs = { whole: createProgram(gl, vertex, whole), dashed: createProgram(gl, vertex, dashed) };
  const held = new Map<string, Held>();

  const hold = (name: string): Held => {
    const known = held.get(name);
    if (known) return known;
    const made = {
      buffer: gl.createBuffer(),
      index: gl.createBuffer(),
      vertices: gl.createVertexArray(),
      count: 0,
      room: 0,
    };
    const stride = numbersPerCorner * bytesPerNumber;
    gl.bindVertexArray(made.vertices);
    gl.bindBuffer(gl.ELEMENT_ARRAY_BUFFER, made.index);
    gl.bindBuffer(gl.ARRAY_BUFFER, made.buffer);
    gl.enableVertexAttribArray(segmentAt);
    gl.vertexAttribPointer(segmentAt, 4, gl.FLOAT, false, stride, 0);
    gl.enableVertexAttribArray(cornerAt);
    gl.vertexAttribPointer(cornerAt, 2, gl.FLOAT, false, stride, 4 * bytesPerNumber);
    gl.bindVertexArray(null);
    held.set(name, made);
    return made;
  };

  return {
    upload: (name, segments) => {
      const target = hold(name);
      const count = segments.length / 4;
      gl.bindVertexArray(target.vertices);
      gl.bindBuffer(gl.ARRAY_BUFFER, target.buffer);
      gl.bufferData(gl.ARRAY_BUFFER, cornersOf(segments), gl.DYNAMIC_DRAW);
      if (count > target.room) {
        // Room to spare, since the number of rows changes with every bearing.
        target.room = 2 * count;
        gl.bufferData(gl.ELEMENT_ARRAY_BUFFER, indexesOf(target.room), gl.STATIC_DRAW);
      }
      gl.bindVertexArray(null);
      target.count = count;
    },
    draw: (name, view, { colour, width_px, dash_px, first = 0, count }) => {
      const target = held.get(name);
      const drawn = Math.min(count ?? Number.POSITIVE_INFINITY, (target?.count ?? 0) - first);
      if (!target || drawn <= 0) return;
      const { program, uniform } = dash_px ? programs.dashed : programs.whole;
      gl.useProgram(program);
      gl.bindVertexArray(target.vertices);
      gl.uniformMatrix4fv(uniform("matrix"), false, view.matrix);
      gl.uniform2f(uniform("halfView"), view.width_px / 2, view.height_px / 2);
      gl.uniform1f(uniform("width"), width_px);
      if (dash_px) gl.uniform2f(uniform("dash"), dash_px[0], dash_px[1]);
      gl.uniform3f(uniform("colour"), colour[0], colour[1], colour[2]);
      const corners = indexOfCorner.length;
      gl.drawElements(gl.TRIANGLES, drawn * corners, gl.UNSIGNED_INT, first * corners * bytesPerNumber);
      gl.bindVertexArray(null);
    },
    dispose: () => {
      for (const { buffer, index, vertices } of held.values()) {
        gl.deleteBuffer(buffer);
        gl.deleteBuffer(index);
        gl.deleteVertexArray(vertices);
      }
      for (const { program } of Object.values(programs)) gl.deleteProgram(program);
    },
  };
}

/** Every segment four times over, each with one of its corners: drawn as instances, each segment would be a pass of its own in software. */
function cornersOf(segments: Float32Array): Float32Array {
  const numbers = new Float32Array(segments.length * numbersPerCorner);
  let n = 0;
  for (let i = 0; i + 3 < segments.length; i += 4) {
    for (let corner = 0; corner < 8; corner += 2) {
      for (let k = 0; k < 4; k++) numbers[n++] = segments[i + k] ?? 0;
      numbers[n++] = cornersOfSegment[corner] ?? 0;
      numbers[n++] = cornersOfSegment[corner + 1] ?? 0;
    }
  }
  return numbers;
}

function indexesOf(count: number): Uint32Array {
  const indexes = new Uint32Array(count * indexOfCorner.length);
  for (let segment = 0; segment < count; segment++) {
    indexOfCorner.forEach((corner, i) => {
      indexes[segment * indexOfCorner.length + i] = 4 * segment + corner;
    });
  }
  return indexes;
}
