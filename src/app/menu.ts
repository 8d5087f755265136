import type { IconName } from "./frame/Icon.svelte";
import { emptyDrawing } from "./session/emptyDrawing";
import { preferences } from "./settings/preferences.svelte";
import type { SheetProps } from "./sheetProps";
import { later } from "./words/later";
import { t } from "./words/words";

/** One line of the menu. */
export interface MenuItem {
  readonly id: string;
  readonly icon: IconName;
  readonly label: string;
  readonly run: () => void;
}

/** The menu, which the finder lists too. */
export function menuOf(app: SheetProps): readonly MenuItem[] {
  const { onclose, onshow } = app;
  const and = (act: () => void) => () => {
    onclose();
    act();
  };
  const isNight = preferences.palette === "night";
  return [
    { id: "find", icon: "find", label: t("app.find"), run: () => onshow("find") },
    { id: "library", icon: "library", label: t("app.library"), run: () => onshow("library") },
    { id: "drill", icon: "next", label: t("place.drill"), run: and(() => app.ongo("drill")) },
    { id: "new", icon: "plus", label: t("app.new"), run: () => app.ondemo(emptyDrawing) },
    { id: "open", icon: "open", label: t("app.open"), run: app.onfile },
    { id: "save", icon: "save", label: t("app.save"), run: app.onsave },
    { id: "kept", icon: "clock", label: t("keep.menu"), run: () => onshow("kept") },
    { id: "picture", icon: "picture", label: t("app.saveSvg"), run: and(() => void savePicture(app)) },
    { id: "share", icon: "share", label: t("share.menu"), run: () => onshow("share") },
    { id: "scan", icon: "scan", label: t("scan.menu"), run: () => onshow("scan") },
    { id: "help", icon: "help", label: t("guide.help"), run: () => onshow("help") },
    { id: "notation", icon: "text", label: t("notation.menu"), run: () => onshow("notation") },
    { id: "legend", icon: "legend", label: t("app.legend"), run: app.onlegend },
    { id: "keys", icon: "keys", label: t("app.keys"), run: app.onkeys },
    { id: "settings", icon: "settings", label: t("app.settings"), run: () => onshow("settings") },
    {
      id: "theme",
      icon: isNight ? "sun" : "moon",
      label: t(isNight ? "settings.sun" : "settings.night"),
      run: and(() => preferences.set({ theme: isNight ? "sun" : "night" })),
    },
  ];
}

async function savePicture({ session }: SheetProps) {
  const { saveSvg } = await later(() => import("./share/write"));
  await saveSvg(session);
}
