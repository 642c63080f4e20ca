package weltwright.app.gui.shell;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.swing.edt.GuiActionRunner.execute;

import java.awt.Component;
import java.awt.Container;
import java.awt.Point;
import java.awt.Rectangle;
import java.awt.datatransfer.DataFlavor;
import java.awt.datatransfer.Transferable;
import java.io.File;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.swing.JComponent;
import javax.swing.JFrame;
import javax.swing.JLabel;
import javax.swing.TransferHandler;
import org.assertj.swing.core.MouseButton;
import org.junit.jupiter.api.Test;
import weltwright.app.gui.model.WorkflowStage;
import weltwright.app.gui.testing.MainWindowTestBase;
import weltwright.app.gui.testing.OutlinedJobs;
import weltwright.app.gui.theme.Theme;

/** The whole window takes files that are dropped on it. */
class WindowDropTest extends MainWindowTestBase {
    private static final Path PHOTO = Path.of("sample-images", "drop-point.jpg").toAbsolutePath();

    @Test
    void noTextAndNoTableTakesADropForItself() {
        assertThat(others()).isEmpty();
        open(OutlinedJobs.outlined());
        for (WorkflowStage stage : WorkflowStage.values()) {
            frame.toggleButton("stage " + stage.label()).click();
            assertThat(others()).isEmpty();
        }
        execute(() -> Theme.DARK.install());
        execute(() -> com.formdev.flatlaf.FlatLaf.updateUI());
        assertThat(others()).isEmpty();
    }

    @Test
    void showsWhereAPhotoIsDroppedAndTakesItOnAText() {
        JFrame desktop = execute(WindowDropTest::desktopWithAFile);
        try {
            robot.waitForIdle();
            Point from = execute(() -> centre(desktop.getContentPane()));
            Point to = execute(() -> centre(robot.finder().findByName("search jobs")));
            robot.moveMouse(from);
            robot.pressMouse(MouseButton.LEFT_BUTTON);
            for (int step = 1; step <= 10; step++) {
                robot.moveMouse(from.x + (to.x - from.x) * step / 10, from.y + (to.y - from.y) * step / 10);
            }
            Component overlay = robot.finder().findByName("drop here", false);
            await("the invitation", () -> execute(overlay::isShowing));
            robot.moveMouse(to.x + 3, to.y);
            robot.releaseMouseButtons();
            await("the photo", () -> job().photo().isPresent());
            assertThat(execute(overlay::isShowing)).isFalse();
        } finally {
            execute(desktop::dispose);
        }
    }

    /** The components that would take a drop before the window does. */
    private List<Component> others() {
        return execute(() -> {
            List<Component> found = new ArrayList<>();
            collect(window.frame().getContentPane(), found);
            return found;
        });
    }

    private static void collect(Container container, List<Component> found) {
        for (Component child : container.getComponents()) {
            if (Optional.ofNullable(child.getDropTarget())
                    .filter(t -> t.isActive())
                    .isPresent()) {
                found.add(child);
            }
            if (child instanceof Container inner) {
                collect(inner, found);
            }
        }
    }

    private static Point centre(Component component) {
        Rectangle box = new Rectangle(component.getLocationOnScreen(), component.getSize());
        return new Point((int) box.getCenterX(), (int) box.getCenterY());
    }

    private static JFrame desktopWithAFile() {
        JLabel icon = new JLabel("a file");
        icon.setTransferHandler(new TransferHandler() {
            @Override
            public int getSourceActions(JComponent source) {
                return COPY;
            }

            @Override
            protected Transferable createTransferable(JComponent source) {
                return new Transferable() {
                    @Override
                    public DataFlavor[] getTransferDataFlavors() {
                        return new DataFlavor[] {DataFlavor.javaFileListFlavor};
                    }

                    @Override
                    public boolean isDataFlavorSupported(DataFlavor flavor) {
                        return flavor.equals(DataFlavor.javaFileListFlavor);
                    }

                    @Override
                    public Object getTransferData(DataFlavor flavor) {
                        return List.<File>of(PHOTO.toFile());
                    }
                };
            }
        });
        icon.addMouseMotionListener(new java.awt.event.MouseMotionAdapter() {
            @Override
            public void mouseDragged(java.awt.event.MouseEvent e) {
                icon.getTransferHandler().exportAsDrag(icon, e, TransferHandler.COPY);
            }
        });
        JFrame desktop = new JFrame("Folder");
        desktop.add(icon);
        desktop.setBounds(0, 0, 120, 80);
        desktop.setAlwaysOnTop(true);
        desktop.setVisible(true);
        return desktop;
    }
}
