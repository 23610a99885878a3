// Loaded before each test file by `npm test`: properties are tried on the values that this seed gives.
import fc from "fast-check";

fc.configureGlobal({ ...fc.readConfigureGlobal(), seed: 20_261_129 });
