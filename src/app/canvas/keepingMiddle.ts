import { type Piece, pieceFor, type Scene } from "../../core";
import { type Camera, showing, type Size, toUnits } from "./camera";

/** What was nearest the middle of the screen stays there, though all stands elsewhere on the drawing. */
export function keepingMiddle(camera: Camera, { width, height }: Size, was: Scene, is: Scene): Camera {
  const middle = toUnits(camera, width / 2, height / 2);
  const away = ({ spine: [x = 0, y = 0] }: Piece) => Math.hypot(x - middle.x, y - middle.y);
  const [nearest] = [...was.points.values()].sort((a, b) => away(a) - away(b));
  const [x, y] = nearest?.spine ?? [];
  const [toX, toY] = (nearest && pieceFor(is, nearest.owner)?.spine) ?? [];
  if (x === undefined || y === undefined || toX === undefined || toY === undefined) return camera;
  return showing(camera, [toX, toY], x * camera.scale + camera.x, y * camera.scale + camera.y);
}
