package weltwright.app.gui.sheath;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.swing.edt.GuiActionRunner.execute;

import java.awt.Point;
import java.awt.Rectangle;
import java.awt.event.KeyEvent;
import java.awt.event.MouseEvent;
import java.awt.image.BufferedImage;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import javax.accessibility.AccessibleContext;
import javax.swing.JList;
import org.junit.jupiter.api.Test;
import weltwright.app.gui.testing.MainWindowTestBase;
import weltwright.app.gui.testing.OutlinedJobs;
import weltwright.app.gui.theme.Theme;
import weltwright.sheath.spec.HandleStrap;
import weltwright.sheath.spec.SheathKind;
import weltwright.sheath.spec.SheathSpec;

/** Shapes are chosen from pictures of the job's knife. */
class ChoicePicturesTest extends MainWindowTestBase {

    @Test
    void eachKindHasAPictureOfItsOwnWithANameForScreenReaders() {
        open(OutlinedJobs.outlined());
        frame.toggleButton("stage Sheath").click();
        JList<?> kinds = frame.list("body").target();
        await("three pictures", () -> distinctPictures(kinds).size() == 3);
        frame.list("body").selectItem(2); // the selected one has another background
        await("three pictures", () -> distinctPictures(kinds).size() == 3);
        assertThat(execute(() -> accessibleNames(kinds)))
                .containsExactly("Folded round the spine", "Two panels, welt all round", "Two panels, welt at edge");
        assertThat(execute(() -> kinds.getAccessibleContext().getAccessibleName()))
                .isEqualTo("Body");
    }

    @Test
    void thePicturesFollowTheKnife() {
        open(OutlinedJobs.outlined());
        frame.toggleButton("fold Cut across").click();
        JList<?> grinds = frame.list("grind").target();
        await("five pictures", () -> distinctPictures(grinds).size() == 5);
        Set<List<Integer>> before = distinctPictures(grinds);
        type("spine thickness", "6");
        await("other pictures", () -> distinctPictures(grinds).stream().noneMatch(before::contains));
    }

    @Test
    void thePicturesFollowTheTheme() {
        open(OutlinedJobs.outlined());
        frame.toggleButton("stage Sheath").click();
        JList<?> kinds = frame.list("body").target();
        await("three pictures", () -> distinctPictures(kinds).size() == 3);
        Set<List<Integer>> light = distinctPictures(kinds);
        execute(() -> Theme.DARK.installInOpenWindows());
        await("other pictures", () -> distinctPictures(kinds).stream().noneMatch(light::contains));
    }

    @Test
    void theArrowKeysChooseAndAClickWithControlLeavesOneChosen() {
        open(OutlinedJobs.outlined());
        frame.toggleButton("stage Sheath").click();
        JList<?> kinds = frame.list("body").target();
        robot.focus(kinds);
        press(KeyEvent.VK_RIGHT);
        assertThat(job().spec().kind()).isEqualTo(SheathKind.PANELS);
        robot.pressKey(KeyEvent.VK_CONTROL);
        frame.list("body").item(1).click();
        robot.releaseKey(KeyEvent.VK_CONTROL);
        assertThat(job().spec().kind()).isEqualTo(SheathKind.PANELS);
        press(KeyEvent.VK_CONTROL, KeyEvent.VK_Z);
        assertThat(execute(kinds::getSelectedIndex)).isZero();
    }

    /** The handle is 110 mm long and a third of it is held, so there is no handle 110 mm above the throat. */
    @Test
    void whatCannotBeMadeIsCrossedOutAndSaysWhy() {
        SheathSpec usual = OutlinedJobs.outlined().spec();
        HandleStrap tooHigh = HandleStrap.USUAL.withAboveThroatMm(110);
        open(OutlinedJobs.outlined().withSpec(usual.withStrap(Optional.of(tooHigh))));
        frame.toggleButton("stage Sheath").click();
        frame.toggleButton("fold Strap round the handle").click();
        JList<?> sides = frame.list("strap opens").target();
        await(
                "why the strap cannot be",
                () -> execute(() -> {
                    Rectangle cell = sides.getCellBounds(0, 0);
                    Point middle = new Point((int) cell.getCenterX(), (int) cell.getCenterY());
                    String tip = sides.getToolTipText(
                            new MouseEvent(sides, MouseEvent.MOUSE_MOVED, 0, 0, middle.x, middle.y, 0, false));
                    return tip != null && tip.contains("does not lie on the handle");
                }));
    }

    private static List<String> accessibleNames(JList<?> list) {
        List<String> names = new ArrayList<>();
        for (int i = 0; i < list.getModel().getSize(); i++) {
            AccessibleContext child =
                    list.getAccessibleContext().getAccessibleChild(i).getAccessibleContext();
            names.add(child.getAccessibleName());
        }
        return names;
    }

    /** The upper part of each cell that is not empty, without the frame of the selected one. */
    private static Set<List<Integer>> distinctPictures(JList<?> list) {
        return execute(() -> {
            BufferedImage painted = new BufferedImage(list.getWidth(), list.getHeight(), BufferedImage.TYPE_INT_RGB);
            list.paint(painted.getGraphics());
            Set<List<Integer>> pictures = new HashSet<>();
            for (int i = 0; i < list.getModel().getSize(); i++) {
                Rectangle cell = list.getCellBounds(i, i);
                cell.grow(-8, -8);
                int[] pixels = painted.getRGB(cell.x, cell.y, cell.width, cell.height / 2, null, 0, cell.width);
                if (Arrays.stream(pixels).distinct().count() > 20) {
                    pictures.add(Arrays.stream(pixels).boxed().toList());
                }
            }
            return pictures;
        });
    }
}
