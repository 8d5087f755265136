export const en = {
  "ruleName.ferroresonance": "A bank over cable with little load is not switched one pole at a time",
  "rule.ferroresonance":
    "{name} switches single poles of {bank}, whose primary is not grounded, over the cable {cable} with {percent} % load: its volts can ring up",
  "rule.ferroresonance.grounded":
    "{name} switches single poles of {bank} over the cable {cable} with {percent} % load: its grounded wye seldom rings, but is no absolute safeguard",
  "rule.ferroresonance.help":
    "switch all three phases together, switch at the bank's own terminals, or leave a few percent of resistive load on it",
} as const;

export const fr: Readonly<Record<keyof typeof en, string>> = {
  "ruleName.ferroresonance": "Un banc sur câble, peu chargé, ne se manœuvre pas un pôle à la fois",
  "rule.ferroresonance":
    "{name} manœuvre un pôle à la fois de {bank}, dont le primaire n'est pas à la terre, par le câble {cable} avec {percent} % de charge : sa tension peut s'emballer",
  "rule.ferroresonance.grounded":
    "{name} manœuvre un pôle à la fois de {bank} par le câble {cable} avec {percent} % de charge : son étoile à la terre s'emballe rarement, mais n'en protège pas à coup sûr",
  "rule.ferroresonance.help":
    "manœuvrez les trois phases ensemble, ou aux bornes mêmes du banc, ou laissez-y quelques pour cent de charge résistive",
};
