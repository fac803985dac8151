#!/usr/bin/env node
import { tuneEngine } from "../workers/engine.js";
import { commandLine } from "./command-line.js";

tuneEngine();
process.exitCode = await commandLine(process.argv.slice(2));
