package weltwright.app.gui.outline;

import java.util.Optional;
import weltwright.knife.MovableLandmark;
import weltwright.knife.MovablePoint;

/** The key bindings of the {@link OutlineCanvas}; the hints of the tools and the tool tips name them. */
final class OutlineKeyBindings {
    private OutlineKeyBindings() {}

    static void install(OutlineCanvas canvas) {
        NodeEditor editor = canvas.nodeEditor();
        for (OutlineTool each : OutlineTool.values()) {
            canvas.bindKey("pressed " + each.key(), () -> {
                if (!each.isBrush() || canvas.brush().isAvailable()) {
                    canvas.setTool(each);
                }
            });
        }
        for (MovableLandmark landmark : MovableLandmark.values()) {
            canvas.bindKey(
                    "pressed " + key(landmark),
                    () -> canvas.select(Optional.<MovablePoint>of(landmark).filter(p -> canvas.hasLandmark(landmark))));
        }
        canvas.bindKey("LEFT", () -> canvas.moveSelection(-1, 0, false));
        canvas.bindKey("RIGHT", () -> canvas.moveSelection(1, 0, false));
        canvas.bindKey("UP", () -> canvas.moveSelection(0, 1, false));
        canvas.bindKey("DOWN", () -> canvas.moveSelection(0, -1, false));
        canvas.bindKey("shift LEFT", () -> canvas.moveSelection(-1, 0, true));
        canvas.bindKey("shift RIGHT", () -> canvas.moveSelection(1, 0, true));
        canvas.bindKey("shift UP", () -> canvas.moveSelection(0, 1, true));
        canvas.bindKey("shift DOWN", () -> canvas.moveSelection(0, -1, true));
        canvas.bindKey("PERIOD", () -> canvas.selectNeighbour(1));
        canvas.bindKey("COMMA", () -> canvas.selectNeighbour(-1));
        canvas.bindKey(
                "INSERT", () -> canvas.selectedNode().ifPresent(node -> canvas.selectIfPresent(editor.addAfter(node))));
        canvas.bindKey(
                "pressed A",
                () -> canvas.selectedNode().ifPresent(node -> canvas.selectIfPresent(editor.addAfter(node))));
        canvas.bindKey("DELETE", canvas::delete);
        canvas.bindKey("BACK_SPACE", canvas::delete);
        canvas.bindKey("pressed C", () -> canvas.selectedNode().ifPresent(editor::toggleCorner));
        canvas.bindKey("pressed E", canvas::snapToEdge);
        canvas.bindKey("pressed V", () -> canvas.showBefore(true));
        canvas.bindKey("released V", () -> canvas.showBefore(false));
        canvas.bindKey("pressed N", () -> canvas.showUncertainStretch(1));
        canvas.bindKey("shift N", () -> canvas.showUncertainStretch(-1));
        canvas.bindKey("pressed Y", canvas::acceptStretch);
        canvas.bindKey("pressed G", () -> {
            canvas.groundLayer().setShown(!canvas.groundLayer().isShown());
            canvas.groundChanged();
        });
        canvas.bindKey("ENTER", () -> {
            if (canvas.tool() == OutlineTool.WIDTH) {
                canvas.silhouette().ifPresent(canvas.widthProbe()::measure);
            }
        });
        canvas.bindKey("ESCAPE", canvas::cancel);
        canvas.bindKey("CONTEXT_MENU", canvas::showMenuAtSelection);
        canvas.bindKey("shift F10", canvas::showMenuAtSelection);
    }

    /** Returns the key that selects a landmark. */
    private static char key(MovableLandmark landmark) {
        return switch (landmark) {
            case TIP -> 'T';
            case HEEL -> 'H';
            case SPINE -> 'S';
            case BUTT -> 'B';
            case GUARD_FRONT -> 'F';
            case GUARD_BACK -> 'K';
        };
    }
}
