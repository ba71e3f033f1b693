import { createProgram, type View } from "./program.ts";

const vertex = `#version 300 es
in vec2 place;
uniform mat4 matrix;
void main() {
  vec4 at = matrix * vec4(place, 0.0, 1.0);
  gl_Position = vec4(at.xy, 0.0, at.w);
}`;

const fragment = `#version 300 es
precision highp float;
uniform vec3 colour;
uniform float alpha;
out vec4 result;
void main() {
  result = vec4(colour * alpha, alpha);
}`;

/** Fills triangles with one colour, held by name on the graphics side. */
export interface FillPen {
  /** x, y of three corners a triangle. */
  upload(name: string, triangles: Float32Array): void;
  draw(name: string, view: View, colour: readonly [number, number, number], alpha: number): void;
  dispose(): void;
}

/** A fill pen for a drawing context. */
export function createFillPen(gl: WebGL2RenderingContext): FillPen {
  const { program, uniform } = createProgram(gl, vertex, fragment);
  const placeAt = gl.getAttribLocation(program, "place");
  const held = new Map<
    string,
    { readonly buffer: WebGLBuffer; readonly vertices: WebGLVertexArrayObject; count: number }
  >();
  return {
    upload: (name, triangles) => {
      const target = held.get(name) ?? { buffer: gl.createBuffer(), vertices: gl.createVertexArray(), count: 0 };
      held.set(name, target);
      target.count = triangles.length / 2;
      gl.bindVertexArray(target.vertices);
      gl.bindBuffer(gl.ARRAY_BUFFER, target.buffer);
      gl.bufferData(gl.ARRAY_BUFFER, triangles, gl.STATIC_DRAW);
      gl.enableVertexAttribArray(placeAt);
      gl.vertexAttribPointer(placeAt, 2, gl.FLOAT, false, 0, 0);
      gl.bindVertexArray(null);
    },
    draw: (name, view, colour, alpha) => {
      const target = held.get(name);
      if (!target || target.count === 0) return;
      gl.useProgram(program);
      gl.bindVertexArray(target.vertices);
      gl.uniformMatrix4fv(uniform("matrix"), false, view.matrix);
      gl.uniform3f(uniform("colour"), colour[0], colour[1], colour[2]);
      gl.uniform1f(uniform("alpha"), alpha);
      // Mixing with what is beneath costs as much again, and is nothing for a solid colour.
      if (alpha === 1) gl.disable(gl.BLEND);
      gl.drawArrays(gl.TRIANGLES, 0, target.count);
      gl.enable(gl.BLEND);
      gl.bindVertexArray(null);
    },
    dispose: () => {
      for (const { buffer, vertices } of held.values()) {
        gl.deleteBuffer(buffer);
        gl.deleteVertexArray(vertices);
      }
      gl.deleteProgram(program);
    },
  };
}
