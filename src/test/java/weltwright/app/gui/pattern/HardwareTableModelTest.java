package weltwright.app.gui.pattern;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import weltwright.app.gui.model.JobModel;
import weltwright.app.gui.testing.OutlinedJobs;
import weltwright.error.UserFacingException;
import weltwright.sheath.hardware.Fastener;
import weltwright.sheath.hardware.Hardware;
import weltwright.sheath.hardware.HardwareList;

class HardwareTableModelTest {
    private static final int POST = 2;
    private static final int HOLDS_FROM = 4;
    private static final int PUNCH = 6;

    private final JobModel model = new JobModel(OutlinedJobs.outlined());
    private final HardwareTableModel rows = new HardwareTableModel(model);

    /** 1/8 in is 3.175 mm; a punch of 4/32 in is that very size, and so snug. */
    @Test
    void readsSizesInAnyUnitAndDerivesThePunch() {
        rows.setValueAt("1/8 in", 0, POST);
        assertThat(first().postMm()).isCloseTo(25.4 / 8, within(1e-12));
        assertThat(rows.getValueAt(0, PUNCH)).isEqualTo("3.18 mm");
        model.undo();
        assertThat(model.job().spec().hardware()).isEqualTo(HardwareList.USUAL);
    }

    @Test
    void refusesInvalidTextsWithoutAChange() {
        assertThatThrownBy(() -> rows.parse(0, POST, "thick"))
                .isInstanceOf(UserFacingException.class)
                .hasMessageContaining("post");
        assertThatThrownBy(() -> rows.parse(0, HardwareTableModel.NAME, " ")).isInstanceOf(UserFacingException.class);
        assertThat(model.canUndo()).isFalse();
    }

    @Test
    void showsNoGripForARing() {
        int ring = rows.getRowCount() - 1;
        assertThat(rows.isCellEditable(ring, POST)).isTrue();
        assertThat(rows.isCellEditable(ring, HOLDS_FROM)).isFalse();
        assertThat(rows.isCellEditable(0, HOLDS_FROM)).isTrue();
        assertThat(rows.isCellEditable(0, PUNCH)).as("it follows from the post").isFalse();
    }

    @Test
    void addsMovesAndRemovesRows() {
        int before = rows.getRowCount();
        int snap = rows.add(Hardware.Kind.SNAP);
        assertThat(rows.getValueAt(snap, 1)).isEqualTo("snap");
        rows.setValueAt("my snap", snap, HardwareTableModel.NAME);
        int higher = rows.moveUp(snap);
        assertThat(rows.getValueAt(higher, HardwareTableModel.NAME)).isEqualTo("my snap");
        rows.remove(higher);
        assertThat(rows.getRowCount()).isEqualTo(before);
        assertThat(model.job().spec().hardware()).isEqualTo(HardwareList.USUAL);
    }

    @Test
    void showsTheListOfAnotherJob() {
        model.open(
                OutlinedJobs.outlined()
                        .withSpec(OutlinedJobs.outlined()
                                .spec()
                                .withHardware(new HardwareList(
                                        List.of(new Fastener("my rivet", Hardware.Kind.RIVET, 3, 9, 2, 6)),
                                        List.of()))),
                Optional.empty());
        assertThat(rows.getRowCount()).isEqualTo(1);
        assertThat(rows.getValueAt(0, HardwareTableModel.NAME)).isEqualTo("my rivet");
    }

    private Fastener first() {
        return model.job().spec().hardware().fasteners().get(0);
    }
}
