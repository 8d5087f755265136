import "./styles.css";
import { mount } from "svelte";
import App from "./App.svelte";
import { preferences } from "./settings/preferences.svelte";
import { whenSpeaking, wordsFor } from "./words/speaking";

whenSpeaking(wordsFor(preferences), () => mount(App, { target: document.getElementById("app")! }));
