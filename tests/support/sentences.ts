import { english, learn } from "../../src/core/terms";

// Tests read what is said anywhere, as the command line does. The app learns in two goes (src/app/words/later.ts).
learn(english);
