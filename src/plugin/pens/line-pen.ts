import { createProgram, type View } from "./program.ts";

// Each segment is a strip of two triangles, widened on the screen: half a width and one pixel to fade the edge.
const vertex = `#version 300 es
in vec2 corner; // 0 or 1 along, -1 or 1 across
in vec4 segment;
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
  float reach = width * 0.5 + 1.0;
  vec2 push = vec2(-d.y, d.x) * corner.y * reach + d * (corner.x * 2.0 - 1.0) * width * 0.5;
  vec4 at = corner.x < 0.5 ? from : to;
  gl_Position = vec4(at.xy + push / halfView * at.w, 0.0, at.w);
  across = corner.y * reach;
  along_px = corner.x * size;
}`;

const fragment = `#version 300 es
precision highp float;
in float across;
in float along_px;
uniform vec2 dash; // pixels drawn and left out; 0 left out is a whole line
uniform vec3 colour;
uniform float width;
out vec4 result;
void main() {
  float drawn = 1.0 - step(dash.x, mod(along_px, dash.x + dash.y));
  float alpha = drawn * clamp(width * 0.5 + 0.5 - abs(across), 0.0, 1.0);
  result = vec4(colour * alpha, alpha);
}`;

const bytesPerSegment = 16;

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
  const { program, uniform } = createProgram(gl, vertex, fragment);
  const corners = gl.createBuffer();
  gl.bindBuffer(gl.ARRAY_BUFFER, corners);
  gl.bufferData(gl.ARRAY_BUFFER, new Float32Array([0, -1, 0, 1, 1, -1, 1, 1]), gl.STATIC_DRAW);
  const cornerAt = gl.getAttribLocation(program, "corner");
  const segmentAt = gl.getAttribLocation(program, "segment");
  const held = new Map<
    string,
    { readonly buffer: WebGLBuffer; readonly vertices: WebGLVertexArrayObject; count: number }
  >();

  const hold = (name: string) => {
    const known = held.get(name);
    if (known) return known;
    const made = { buffer: gl.createBuffer(), vertices: gl.createVertexArray(), count: 0 };
    gl.bindVertexArray(made.vertices);
    gl.bindBuffer(gl.ARRAY_BUFFER, corners);
    gl.enableVertexAttribArray(cornerAt);
    gl.vertexAttribPointer(cornerAt, 2, gl.FLOAT, false, 0, 0);
    gl.enableVertexAttribArray(segmentAt);
    gl.vertexAttribDivisor(segmentAt, 1);
    gl.bindVertexArray(null);
    held.set(name, made);
    return made;
  };

  return {
    upload: (name, segments) => {
      const target = hold(name);
      target.count = segments.length / 4;
      gl.bindBuffer(gl.ARRAY_BUFFER, target.buffer);
      gl.bufferData(gl.ARRAY_BUFFER, segments, gl.DYNAMIC_DRAW);
    },
    draw: (name, view, { colour, width_px, dash_px = [1, 0], first = 0, count }) => {
      const target = held.get(name);
      const drawn = Math.min(count ?? Number.POSITIVE_INFINITY, (target?.count ?? 0) - first);
      if (!target || drawn <= 0) return;
      gl.useProgram(program);
      gl.bindVertexArray(target.vertices);
      gl.bindBuffer(gl.ARRAY_BUFFER, target.buffer);
      gl.vertexAttribPointer(segmentAt, 4, gl.FLOAT, false, bytesPerSegment, first * bytesPerSegment);
      gl.uniformMatrix4fv(uniform("matrix"), false, view.matrix);
      gl.uniform2f(uniform("halfView"), view.width_px / 2, view.height_px / 2);
      gl.uniform1f(uniform("width"), width_px);
      gl.uniform2f(uniform("dash"), dash_px[0], dash_px[1]);
      gl.uniform3f(uniform("colour"), colour[0], colour[1], colour[2]);
      gl.drawArraysInstanced(gl.TRIANGLE_STRIP, 0, 4, drawn);
      gl.bindVertexArray(null);
    },
    dispose: () => {
      for (const { buffer, vertices } of held.values()) {
        gl.deleteBuffer(buffer);
        gl.deleteVertexArray(vertices);
      }
      gl.deleteBuffer(corners);
      gl.deleteProgram(program);
    },
  };
}
