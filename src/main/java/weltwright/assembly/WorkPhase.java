package weltwright.assembly;

import weltwright.message.Messages;

/** The phases of the work, in order. No operation waits for one of a later phase. */
public enum WorkPhase {
    PREPARE(Messages.of(WorkPhase.class).text("work-phase.cut-and-mark")),
    HOLES(Messages.of(WorkPhase.class).text("work-phase.grooves-and-holes")),
    EDGES(Messages.of(WorkPhase.class).text("work-phase.edges-out-of-reach-later")),
    JOIN(Messages.of(WorkPhase.class).text("work-phase.fold-glue-and-sew")),
    SHAPE(Messages.of(WorkPhase.class).text("work-phase.trim-and-form")),
    FINISH(Messages.of(WorkPhase.class).text("work-phase.finish"));

    private final String words;

    WorkPhase(String words) {
        this.words = words;
    }

    /** Returns its title for the maker. */
    public String words() {
        return words;
    }
}
