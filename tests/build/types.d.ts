// What the build makes, and so is not there to be checked.
declare module "*/engine.js" {
  export const ENGINE: { folder: string; root: string; key: string; calc: string; lock: object };
}
