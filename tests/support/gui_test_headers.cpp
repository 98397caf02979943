// Nothing but the precompiled headers of the window tests.
