console.log("usage: stillhot <command> [file]");
