import fc from "fast-check";

// The same draws in every run: a test that fails today fails tomorrow. Change the seed now and then to look elsewhere.
fc.configureGlobal({ seed: 20261125 });
