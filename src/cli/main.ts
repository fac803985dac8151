#!/usr/bin/env node
import { translateLess } from "../workers/engine.js";
import { commandLine } from "./command-line.js";

translateLess();
process.exitCode = await commandLine(process.argv.slice(2));
