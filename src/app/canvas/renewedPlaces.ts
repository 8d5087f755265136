import { changeOf, type NoteSizes, type PlacedNote, renewedNotes, type Scene } from "../../core";

/** Notes where they stood before an edit, saying what holds after it; nothing where another drawing or other letters are shown. */
export function renewedPlaces(
  placed: readonly PlacedNote[],
  was: { readonly scene: Scene; readonly sizes: NoteSizes },
  { scene, sizes }: { readonly scene: Scene; readonly sizes: NoteSizes },
): readonly PlacedNote[] | undefined {
  const change = was.scene === scene ? undefined : changeOf(scene);
  return change?.before === was.scene && was.sizes === sizes
    ? renewedNotes(placed, scene, change, sizes)
    : undefined;
}
