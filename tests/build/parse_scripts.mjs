// Parse every script named on the command line, as a module or, when it is loaded as a plain script, as that.
import { readFileSync } from 'node:fs';
import vm from 'node:vm';

const PLAIN = /\/(sw|guard|theme|find)\.js$/;
let wrong = 0;
for (const name of process.argv.slice(2)) {
  const text = readFileSync(name, 'utf8');
  try {
    if (PLAIN.test(name)) new vm.Script(text, { filename: name });
    else new vm.SourceTextModule(text, { identifier: name });
  } catch (error) {
    wrong += 1;
    console.error(`${name}: ${error.stack.split('\n').slice(0, 4).join('\n')}`);
  }
}
process.exit(wrong ? 1 : 0);
