// Nothing but the precompiled headers of the core tests.
