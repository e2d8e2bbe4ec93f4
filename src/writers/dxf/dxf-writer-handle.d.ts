/** The counter behind dxf-writer's handles; its own types leave it out. */
declare module 'dxf-writer/src/Handle.js' {
  const Handle: { seed: number }
  export default Handle
}
