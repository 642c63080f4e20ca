package weltwright.app.gui.outline;

import java.util.Optional;
import javax.swing.JPopupMenu;
import weltwright.app.gui.widget.RunnableAction;
import weltwright.geometry.Point;
import weltwright.knife.MovableNode;
import weltwright.knife.Silhouette;
import weltwright.message.Messages;

/** Builds the popup menu of the {@link OutlineCanvas}. */
final class OutlinePopupMenu {
    private static final Messages TEXTS = Messages.of(OutlinePopupMenu.class);

    /** Length along the knife of a guard that is newly marked, for its ends to be moved; chosen by eye. */
    private static final double DEFAULT_GUARD_MM = 6;

    private OutlinePopupMenu() {}

    /** Returns the menu for a point in mm, and selects the node there; empty where nothing can be done. */
    static Optional<JPopupMenu> at(OutlineCanvas canvas, Point mm, double hitRadiusMm) {
        if (canvas.silhouette().isEmpty()) {
            return Optional.empty();
        }
        JPopupMenu menu = new JPopupMenu();
        NodeEditor editor = canvas.nodeEditor();
        Optional<MovableNode> node = editor.nearestNode(mm, hitRadiusMm);
        if (node.isPresent()) {
            canvas.setTool(OutlineTool.POINTS);
            canvas.select(Optional.of(node.get()));
            boolean sharp = editor.node(node.get()).sharp();
            menu.add(new RunnableAction(
                    sharp
                            ? TEXTS.text("outline-popup-menu.make-it-smooth")
                            : TEXTS.text("outline-popup-menu.make-it-a-corner"),
                    "",
                    () -> editor.toggleCorner(node.get())));
            menu.add(new RunnableAction(
                    TEXTS.text("outline-popup-menu.remove-this-point"),
                    "",
                    () -> canvas.selectIfPresent(editor.remove(node.get()))));
            menu.add(
                    new RunnableAction(TEXTS.text("outline-popup-menu.pull-to-the-edge-here"), "", canvas::snapToEdge));
        } else if (canvas.isOnOutline(mm, hitRadiusMm)) {
            menu.add(new RunnableAction(TEXTS.text("outline-popup-menu.add-a-point-here"), "", () -> {
                canvas.setTool(OutlineTool.POINTS);
                canvas.selectIfPresent(editor.add(mm));
            }));
        }
        addGuardActions(canvas, menu, mm, hitRadiusMm);
        canvas.tour()
                .current()
                .ifPresent(stretch -> menu.add(new RunnableAction(
                        TEXTS.text("outline-popup-menu.the-outline-is-right-here"), "", canvas::acceptStretch)));
        return menu.getComponentCount() == 0 ? Optional.empty() : Optional.of(menu);
    }

    private static void addGuardActions(OutlineCanvas canvas, JPopupMenu menu, Point mm, double hitRadiusMm) {
        NodeEditor editor = canvas.nodeEditor();
        Silhouette silhouette = canvas.silhouette().orElseThrow();
        if (silhouette.landmarks().guard().isPresent()) {
            menu.add(new RunnableAction(TEXTS.text("outline-popup-menu.there-is-no-guard"), "", () -> {
                canvas.select(Optional.empty());
                editor.edit(null, s -> s.withGuard(Optional.empty()));
            }));
        } else if (canvas.isOnOutline(mm, hitRadiusMm)) {
            double fromTip = silhouette.landmarks().tip().x() - mm.x();
            menu.add(new RunnableAction(
                    TEXTS.text("outline-popup-menu.mark-a-guard-here"),
                    "",
                    () -> editor.edit(
                            null,
                            s -> s.withGuardFromTip(fromTip - DEFAULT_GUARD_MM / 2, fromTip + DEFAULT_GUARD_MM / 2))));
        }
    }
}
