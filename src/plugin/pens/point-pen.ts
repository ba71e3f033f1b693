import { createProgram, type View } from "./program.ts";

const vertex = `#version 300 es
in vec2 place;
uniform mat4 matrix;
uniform float size;
void main() {
  vec4 at = matrix * vec4(place, 0.0, 1.0);
  gl_Position = vec4(at.xy, 0.0, at.w);
  gl_PointSize = size;
}`;

const fragment = `#version 300 es
precision highp float;
uniform vec3 colour;
uniform vec3 border;
uniform float size;
uniform float square; // 1 for a square, 0 for a dot
out vec4 result;
void main() {
  vec2 away = abs(gl_PointCoord - 0.5);
  float dotted = clamp((0.5 - length(away)) * size, 0.0, 1.0);
  float alpha = mix(dotted, 1.0, square);
  // The border is an eighth of a square's side.
  float edge = square * step(0.375, max(away.x, away.y));
  result = vec4(mix(colour, border, edge) * alpha, alpha);
}`;

export interface PointLook {
  readonly shape: "dot" | "square";
  readonly colour: readonly [number, number, number];
  /** Around a square. Default the colour itself. */
  readonly border?: readonly [number, number, number];
  readonly size_px: number;
}

/** Draws points of one look. */
export interface PointPen {
  /** x, y of every point. */
  upload(places: Float32Array): void;
  /** Draws those of the ranges: first and one after the last, in turn. */
  draw(view: View, look: PointLook, ranges: readonly number[]): void;
  dispose(): void;
}

/** A point pen for a drawing context. */
export function createPointPen(gl: WebGL2RenderingContext): PointPen {
  const { program, uniform } = createProgram(gl, vertex, fragment);
  const buffer = gl.createBuffer();
  const vertices = gl.createVertexArray();
  const placeAt = gl.getAttribLocation(program, "place");
  let count = 0;
  gl.bindVertexArray(vertices);
  gl.bindBuffer(gl.ARRAY_BUFFER, buffer);
  gl.enableVertexAttribArray(placeAt);
  gl.vertexAttribPointer(placeAt, 2, gl.FLOAT, false, 0, 0);
  gl.bindVertexArray(null);
  return {
    upload: (places) => {
      if (count === 0 && places.length === 0) return;
      count = places.length / 2;
      gl.bindBuffer(gl.ARRAY_BUFFER, buffer);
      gl.bufferData(gl.ARRAY_BUFFER, places, gl.DYNAMIC_DRAW);
    },
    draw: (view, { shape, colour, border = colour, size_px }, ranges) => {
      if (count === 0 || ranges.length === 0) return;
      gl.useProgram(program);
      gl.bindVertexArray(vertices);
      gl.uniformMatrix4fv(uniform("matrix"), false, view.matrix);
      gl.uniform1f(uniform("size"), size_px);
      gl.uniform1f(uniform("square"), shape === "square" ? 1 : 0);
      gl.uniform3f(uniform("colour"), colour[0], colour[1], colour[2]);
      gl.uniform3f(uniform("border"), border[0], border[1], border[2]);
      for (let i = 0; i + 1 < ranges.length; i += 2) {
        const [first = 0, end = 0] = ranges.slice(i, i + 2);
        gl.drawArrays(gl.POINTS, first, Math.min(end, count) - first);
      }
      gl.bindVertexArray(null);
    },
    dispose: () => {
      gl.deleteBuffer(buffer);
      gl.deleteVertexArray(vertices);
      gl.deleteProgram(program);
    },
  };
}
