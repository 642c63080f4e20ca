package weltwright.app.gui.leather;

import weltwright.message.Messages;

/**
 * How far the layout of the present job is.
 *
 * @param reason what the maker should look at; empty where there is nothing
 */
public record LayoutProgress(State state, String reason) {
    /** Nothing is laid out. */
    public static final LayoutProgress NONE = new LayoutProgress(State.NOT_BEGUN, "");

    /** Steps of a layout. */
    public enum State {
        NOT_BEGUN,
        SEARCHING,
        LAID_OUT,
        /** Some pieces, or all, have no room on the chosen leather. */
        NO_ROOM
    }

    static LayoutProgress of(LayoutModel model) {
        return switch (model.phase()) {
            case NO_SHEATH, NO_STOCK, WAITING -> NONE;
            case SEARCHING -> new LayoutProgress(State.SEARCHING, "");
            case FAILED -> new LayoutProgress(State.NO_ROOM, model.error());
            case HELD, FOUND, BY_HAND, CUT -> model.layouts().isEmpty() ? NONE : laidOut(leftOut(model));
        };
    }

    private static LayoutProgress laidOut(String leftOut) {
        return new LayoutProgress(leftOut.isEmpty() ? State.LAID_OUT : State.NO_ROOM, leftOut);
    }

    /** Tells which pieces have no leather of theirs; empty where all have. */
    static String leftOut(LayoutModel model) {
        return model.input()
                .map(LayoutInput::leftOut)
                .filter(names -> !names.isEmpty())
                .map(names -> Messages.of(LayoutProgress.class)
                        .text("remark.left_out", String.join(", ", names), names.size()))
                .orElse("");
    }
}
