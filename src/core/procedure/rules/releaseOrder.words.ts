export const en = {
  "ruleName.release-order": "Release goes in order: people, grounds, permit, tags",
  "rule.release-order.people": "the permit is released while people are still on the line at {where}",
  "rule.release-order.people.help": "get the all-clear from every person first",
  "rule.release-order.untag": "the tag on {name} comes off while people are still on the line at {where}",
  "rule.release-order.unblock": "{name} is unblocked while people are still on the line at {where}",
  "rule.release-order.grounds": "the permit is released while {sets} is still on",
  "rule.release-order.grounds.help": "take {sets} off first",
  "rule.release-order.none": "there is no permit to release",
  "rule.release-order.tag": "the tag on {name} comes off before the permit is released",
  "rule.release-order.tag.help": "release the permit first, then take the tags off",
} as const;

export const fr: Readonly<Record<keyof typeof en, string>> = {
  "ruleName.release-order": "La remise suit l'ordre : personnes, terres, autorisation, étiquettes",
  "rule.release-order.people":
    "l'autorisation est rendue alors qu'il y a encore du monde sur la ligne à {where}",
  "rule.release-order.people.help": "obtenez d'abord le dégagement de chacun",
  "rule.release-order.untag":
    "l'étiquette de {name} part alors qu'il y a encore du monde sur la ligne à {where}",
  "rule.release-order.unblock": "on débloque {name} alors qu'il y a encore du monde sur la ligne à {where}",
  "rule.release-order.grounds": "l'autorisation est rendue alors que {sets} est encore posé",
  "rule.release-order.grounds.help": "ôtez d'abord {sets}",
  "rule.release-order.none": "il n'y a pas d'autorisation à rendre",
  "rule.release-order.tag": "l'étiquette de {name} part avant que l'autorisation soit rendue",
  "rule.release-order.tag.help": "rendez d'abord l'autorisation, puis ôtez les étiquettes",
};
