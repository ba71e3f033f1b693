/** What a pen needs to know of the view. */
export interface View {
  /** Offsets from the local origin to clip space. */
  readonly matrix: Float32Array;
  readonly width_px: number;
  readonly height_px: number;
}

/** A linked program, with its uniforms by name; throws when the shaders do not compile, which is a fault of ours. */
export function createProgram(
  gl: WebGL2RenderingContext,
  vertex: string,
  fragment: string,
): { readonly program: WebGLProgram; readonly uniform: (name: string) => WebGLUniformLocation | null } {
  const program = gl.createProgram();
  for (const [kind, source] of [
    [gl.VERTEX_SHADER, vertex],
    [gl.FRAGMENT_SHADER, fragment],
  ] as const) {
    const shader = gl.createShader(kind);
    if (!shader) throw new Error("no shader: the drawing context is lost");
    gl.shaderSource(shader, source);
    gl.compileShader(shader);
    gl.attachShader(program, shader);
    gl.deleteShader(shader);
  }
  gl.linkProgram(program);
  if (!gl.getProgramParameter(program, gl.LINK_STATUS) && !gl.isContextLost()) {
    throw new Error(gl.getProgramInfoLog(program) ?? "the shaders do not link");
  }
  const uniforms = new Map<string, WebGLUniformLocation | null>();
  return {
    program,
    uniform: (name) => {
      if (!uniforms.has(name)) uniforms.set(name, gl.getUniformLocation(program, name));
      return uniforms.get(name) ?? null;
    },
  };
}
