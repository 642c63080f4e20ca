package weltwright.app.gui.pattern;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import javax.swing.table.AbstractTableModel;
import org.jspecify.annotations.Nullable;
import weltwright.app.gui.form.TypedLength;
import weltwright.app.gui.model.JobModel;
import weltwright.error.UserFacingException;
import weltwright.job.Job;
import weltwright.job.JobFields;
import weltwright.message.Messages;
import weltwright.sheath.hardware.Fastener;
import weltwright.sheath.hardware.Hardware;
import weltwright.sheath.hardware.HardwareList;
import weltwright.sheath.hardware.Ring;
import weltwright.units.LengthField;

/** The job's list of hardware as a table model: one row for each, fasteners before rings. Each edit is an undo step. */
final class HardwareTableModel extends AbstractTableModel {
    private static final Messages TEXTS = Messages.of(HardwareTableModel.class);

    private static final List<String> COLUMNS = List.of(
            TEXTS.text("hardware-table-model.name"),
            TEXTS.text("hardware-table-model.kind"),
            TEXTS.text("hardware-table-model.post-or-ring-inside"),
            TEXTS.text("hardware-table-model.cap-or-wire"),
            TEXTS.text("hardware-table-model.holds-from"),
            TEXTS.text("hardware-table-model.holds-to"),
            TEXTS.text("hardware-table-model.punch"));
    static final int NAME = 0;
    private static final int KIND = 1;
    private static final int POST = 2;
    private static final int CAP = 3;
    private static final int FROM = 4;
    private static final int TO = 5;

    private final transient JobModel model;
    private transient @Nullable HardwareList displayed;
    /** The unit and what was typed. */
    private transient Object displayedAs = List.of();

    HardwareTableModel(JobModel model) {
        this.model = model;
        model.subscribe(this::update);
    }

    private void update() {
        HardwareList current = list();
        Object shownAs = List.of(model.unit(), model.job().typed());
        if (current.equals(displayed) && shownAs.equals(displayedAs)) {
            return;
        }
        displayedAs = shownAs;
        boolean sameRows = displayed != null
                && displayed.fasteners().size() == current.fasteners().size()
                && displayed.rings().size() == current.rings().size();
        displayed = current;
        if (sameRows) {
            fireTableRowsUpdated(0, getRowCount() - 1);
        } else {
            fireTableDataChanged();
        }
    }

    HardwareList list() {
        return model.job().spec().hardware();
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
            case NAME -> hardware.words();
            case KIND -> TEXTS.text("hardware-table-model.kind." + hardware.kind());
            default -> hardware instanceof Fastener f ? formatSize(f, column) : formatSize((Ring) hardware, column);
        };
    }

    private String formatSize(Fastener f, int column) {
        return switch (column) {
            case POST -> formatSize(f, column, JobFields.POST, f.postMm());
            case CAP -> formatSize(f, column, JobFields.CAP, f.capMm());
            case FROM -> formatSize(f, column, JobFields.GRIP_FROM, f.gripFromMm());
            case TO -> formatSize(f, column, JobFields.GRIP_TO, f.gripToMm());
            default -> model.unit().formatExactly(f.punchMm());
        };
    }

    private String formatSize(Hardware hardware, int column, LengthField field, double mm) {
        return TypedLength.of(model, typedKey(hardware.name(), column), field, mm);
    }

    /** Returns the key of what was typed in a cell, among all that was typed in the job; the same in each language. */
    private static String typedKey(String hardware, int column) {
        return switch (column) {
                    case POST -> "Post, or ring inside";
                    case CAP -> "Cap, or wire";
                    case FROM -> "Holds from";
                    default -> "Holds to";
                }
                + " of " + hardware;
    }

    private String formatSize(Ring ring, int column) {
        return switch (column) {
            case POST -> formatSize(ring, column, JobFields.RING_INSIDE, ring.insideMm());
            case CAP -> formatSize(ring, column, JobFields.RING_WIRE, ring.wireMm());
            default -> "";
        };
    }

    /** Returns the hardware of a row after an edit; throws {@link UserFacingException} where the text is not valid. */
    Hardware parse(int row, int column, String text) {
        if (column == NAME && text.isBlank()) {
            throw new UserFacingException(
                    TEXTS.text("hardware-table-model.it-has-no-name"),
                    TEXTS.text("hardware-table-model.write-what-you-ask-for"));
        }
        Hardware before = row(row);
        if (before instanceof Ring ring) {
            return switch (column) {
                case POST -> new Ring(ring.name(), readMm(JobFields.RING_INSIDE, text), ring.wireMm());
                case CAP -> new Ring(ring.name(), ring.insideMm(), readMm(JobFields.RING_WIRE, text));
                default -> new Ring(text.strip(), ring.insideMm(), ring.wireMm());
            };
        }
        Fastener f = (Fastener) before;
        return new Fastener(
                column == NAME ? text.strip() : f.name(),
                f.kind(),
                read(column == POST, JobFields.POST, text, f.postMm()),
                read(column == CAP, JobFields.CAP, text, f.capMm()),
                read(column == FROM, JobFields.GRIP_FROM, text, f.gripFromMm()),
                read(column == TO, JobFields.GRIP_TO, text, f.gripToMm()));
    }

    private double read(boolean edited, LengthField field, String text, double fallback) {
        return edited ? readMm(field, text) : fallback;
    }

    private double readMm(LengthField field, String text) {
        return field.readMm(text, model.unit().ofBareNumbers());
    }

    @Override
    public void setValueAt(Object typed, int row, int column) {
        if (typed.equals(getValueAt(row, column))) {
            return; // what is shown is rounded
        }
        List<Hardware> rows = rows();
        Hardware edited = parse(row, column, (String) typed);
        rows.set(row, edited);
        HardwareList list = new HardwareList(of(rows, Fastener.class), of(rows, Ring.class));
        model.change(job -> {
            Job changed = job.withSpec(job.spec().withHardware(list));
            return column == NAME
                    ? changed
                    : changed.withTyped(typedKey(edited.name(), column), Optional.of(((String) typed).strip()));
        });
    }

    /** Adds the first usual hardware of a kind and returns its row. */
    int add(Hardware.Kind kind) {
        List<Hardware> rows = rows();
        HardwareList usual = HardwareList.USUAL;
        Hardware another = Stream.<Hardware>concat(usual.fasteners().stream(), usual.rings().stream())
                .filter(hardware -> hardware.kind() == kind)
                .findFirst()
                .orElseThrow();
        int at = kind == Hardware.Kind.RING ? rows.size() : list().fasteners().size();
        rows.add(at, another);
        setList(rows);
        return at;
    }

    void remove(int row) {
        List<Hardware> rows = rows();
        rows.remove(row);
        setList(rows);
    }

    /** Moves a row up by one among its kind, which makes it preferred, and returns its new index. */
    int moveUp(int row) {
        if (row == 0 || row == list().fasteners().size()) {
            return row;
        }
        List<Hardware> rows = rows();
        rows.add(row - 1, rows.remove(row));
        setList(rows);
        return row - 1;
    }

    void setList(HardwareList other) {
        model.change(job -> job.withSpec(job.spec().withHardware(other)));
    }

    private List<Hardware> rows() {
        List<Hardware> rows = new ArrayList<>(list().fasteners());
        rows.addAll(list().rings());
        return rows;
    }

    private void setList(List<Hardware> rows) {
        setList(new HardwareList(of(rows, Fastener.class), of(rows, Ring.class)));
    }

    private static <T> List<T> of(List<Hardware> rows, Class<T> kind) {
        return rows.stream().filter(kind::isInstance).map(kind::cast).toList();
    }
}
