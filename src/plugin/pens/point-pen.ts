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
uniform float size;
out vec4 result;
void main() {
  float alpha = clamp((0.5 - length(gl_PointCoord - 0.5)) * size, 0.0, 1.0);
  result = vec4(colour * alpha, alpha);
}`;

/** Draws round dots of one size. */
export interface PointPen {
  /** x, y of every dot. */
  upload(places: Float32Array): void;
  draw(view: View, colour: readonly [number, number, number], size_px: number): void;
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
    draw: (view, colour, size_px) => {
      if (count === 0) return;
      gl.useProgram(program);
      gl.bindVertexArray(vertices);
      gl.uniformMatrix4fv(uniform("matrix"), false, view.matrix);
      gl.uniform1f(uniform("size"), size_px);
      gl.uniform3f(uniform("colour"), colour[0], colour[1], colour[2]);
      gl.drawArrays(gl.POINTS, 0, count);
      gl.bindVertexArray(null);
    },
    dispose: () => {
      gl.deleteBuffer(buffer);
      gl.deleteVertexArray(vertices);
      gl.deleteProgram(program);
    },
  };
}
