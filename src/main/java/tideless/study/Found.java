package tideless.study;

/** What a log says if so much is fitted. */
record Found(FitSpace space, Posterior posterior) {}
