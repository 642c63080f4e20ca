package weltwright.app.gui.pattern;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import javax.swing.table.AbstractTableModel;
import org.jspecify.annotations.Nullable;
import weltwright.app.gui.model.JobModel;
import weltwright.error.UserFacingException;
import weltwright.job.JobFields;
import weltwright.sheath.hardware.Fastener;
import weltwright.sheath.hardware.Hardware;
import weltwright.sheath.hardware.HardwareList;
import weltwright.sheath.hardware.Ring;
import weltwright.units.Length;
import weltwright.units.LengthField;

/**
 * The job's list of hardware as a table: a row each, fasteners first, then rings. What is typed is a step of its own.
 */
final class HardwareTableModel extends AbstractTableModel {
    private static final List<String> COLUMNS =
            List.of("Name", "Kind", "Post, or ring inside", "Cap, or wire", "Holds from", "Holds to", "Punch");
    static final int NAME = 0;
    private static final int KIND = 1;
    private static final int POST = 2;
    private static final int CAP = 3;
    private static final int FROM = 4;
    private static final int TO = 5;

    private final transient JobModel bench;
    private transient @Nullable HardwareList shown;

    HardwareTableModel(JobModel bench) {
        this.bench = bench;
        bench.watch(this::look);
    }

    private void look() {
        HardwareList now = list();
        if (now.equals(shown)) {
            return;
        }
        boolean sameRows = shown != null
                && shown.fasteners().size() == now.fasteners().size()
                && shown.rings().size() == now.rings().size();
        shown = now;
        if (sameRows) {
            fireTableRowsUpdated(0, getRowCount() - 1);
        } else {
            fireTableDataChanged();
        }
    }

    HardwareList list() {
        return bench.job().spec().hardware();
    }

    private Hardware row(int row) {
        int fasteners = list().fasteners().size();
        return row < fasteners ? list().fasteners().get(row) : list().rings().get(row - fasteners);
    }

    @Override
    public int getRowCount() {
        return list().fasteners().size() + list().rings().size();
    }

    @Override
    public int getColumnCount() {
        return COLUMNS.size();
    }

    @Override
    public String getColumnName(int column) {
        return COLUMNS.get(column);
    }

    @Override
    public boolean isCellEditable(int row, int column) {
        boolean ring = row(row) instanceof Ring;
        return column == NAME || column == POST || column == CAP || (!ring && (column == FROM || column == TO));
    }

    @Override
    public String getValueAt(int row, int column) {
        Hardware hardware = row(row);
        return switch (column) {
            case NAME -> hardware.name();
            case KIND -> hardware.kind().name().toLowerCase(Locale.ROOT);
            default -> hardware instanceof Fastener f ? sized(f, column) : sized((Ring) hardware, column);
        };
    }

    private static String sized(Fastener f, int column) {
        double mm = switch (column) {
            case POST -> f.postMm();
            case CAP -> f.capMm();
            case FROM -> f.gripFromMm();
            case TO -> f.gripToMm();
            default -> f.punchMm();
        };
        return new Length(mm).inMillimetres();
    }

    private static String sized(Ring ring, int column) {
        return switch (column) {
            case POST -> new Length(ring.insideMm()).inMillimetres();
            case CAP -> new Length(ring.wireMm()).inMillimetres();
            default -> "";
        };
    }

    /** What a row becomes by what was typed; throws {@link UserFacingException} where that cannot be read. */
    Hardware typed(int row, int column, String text) {
        if (column == NAME && text.isBlank()) {
            throw new UserFacingException("It has no name.", "Write what you ask for in a shop.");
        }
        Hardware was = row(row);
        if (was instanceof Ring ring) {
            return switch (column) {
                case POST -> new Ring(ring.name(), JobFields.RING_INSIDE.readMm(text), ring.wireMm());
                case CAP -> new Ring(ring.name(), ring.insideMm(), JobFields.RING_WIRE.readMm(text));
                default -> new Ring(text.strip(), ring.insideMm(), ring.wireMm());
            };
        }
        Fastener f = (Fastener) was;
        return new Fastener(
                column == NAME ? text.strip() : f.name(),
                f.kind(),
                read(column == POST, JobFields.POST, text, f.postMm()),
                read(column == CAP, JobFields.CAP, text, f.capMm()),
                read(column == FROM, JobFields.GRIP_FROM, text, f.gripFromMm()),
                read(column == TO, JobFields.GRIP_TO, text, f.gripToMm()));
    }

    private static double read(boolean here, LengthField field, String text, double otherwise) {
        return here ? field.readMm(text) : otherwise;
    }

    @Override
    public void setValueAt(Object typed, int row, int column) {
        List<Hardware> rows = rows();
        rows.set(row, typed(row, column, (String) typed));
        become(rows);
    }

    /** One more, like a usual one; returns its row. */
    int add(Hardware.Kind kind) {
        List<Hardware> rows = rows();
        HardwareList usual = HardwareList.USUAL;
        Hardware another = Stream.<Hardware>concat(usual.fasteners().stream(), usual.rings().stream())
                .filter(hardware -> hardware.kind() == kind)
                .findFirst()
                .orElseThrow();
        int at = kind == Hardware.Kind.RING ? rows.size() : list().fasteners().size();
        rows.add(at, another);
        become(rows);
        return at;
    }

    void remove(int row) {
        List<Hardware> rows = rows();
        rows.remove(row);
        become(rows);
    }

    /** Nearer to the top, where it is liked better; returns its row. */
    int raise(int row) {
        if (row == 0 || row == list().fasteners().size()) {
            return row;
        }
        List<Hardware> rows = rows();
        rows.add(row - 1, rows.remove(row));
        become(rows);
        return row - 1;
    }

    void become(HardwareList other) {
        bench.change(job -> job.withSpec(job.spec().with(other)));
    }

    private List<Hardware> rows() {
        List<Hardware> rows = new ArrayList<>(list().fasteners());
        rows.addAll(list().rings());
        return rows;
    }

    private void become(List<Hardware> rows) {
        become(new HardwareList(of(rows, Fastener.class), of(rows, Ring.class)));
    }

    private static <T> List<T> of(List<Hardware> rows, Class<T> kind) {
        return rows.stream().filter(kind::isInstance).map(kind::cast).toList();
    }
}
