import "./styles.css";
import { mount } from "svelte";
import App from "./App.svelte";
import { preferences } from "./settings/preferences.svelte";
import { languageFor, whenSpeaking } from "./words/language.svelte";

whenSpeaking(languageFor(preferences.language), () =>
  mount(App, { target: document.getElementById("app")! }),
);
