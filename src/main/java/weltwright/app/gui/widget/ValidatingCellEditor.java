package weltwright.app.gui.widget;

import java.awt.Component;
import java.util.function.Consumer;
import javax.swing.BorderFactory;
import javax.swing.DefaultCellEditor;
import javax.swing.JTable;
import javax.swing.JTextField;
import weltwright.app.gui.theme.ThemeColors;
import weltwright.error.UserFacingException;

/**
 * A cell of a table to type in. What cannot be read stays there in a red frame, and why is said in plain words; Escape
 * brings back what was there.
 */
public final class ValidatingCellEditor extends DefaultCellEditor {
    private final transient Check check;
    private final transient Consumer<String> why;
    private int row;
    private int column;

    /** Throws {@link UserFacingException} where a cell cannot take a text. */
    public interface Check {
        void check(int row, int column, String text);
    }

    /** @param why told what is wrong, or nothing where nothing is */
    public ValidatingCellEditor(Check check, Consumer<String> why) {
        super(new JTextField());
        this.check = check;
        this.why = why;
        setClickCountToStart(1);
    }

    @Override
    public Component getTableCellEditorComponent(JTable table, Object value, boolean selected, int row, int column) {
        this.row = row;
        this.column = column;
        JTextField field = (JTextField) super.getTableCellEditorComponent(table, value, selected, row, column);
        field.setName("cell");
        field.getAccessibleContext().setAccessibleName(table.getColumnName(column));
        right(field);
        field.selectAll();
        return field;
    }

    @Override
    public boolean stopCellEditing() {
        JTextField field = (JTextField) getComponent();
        try {
            check.check(row, column, field.getText());
        } catch (UserFacingException e) {
            why.accept(e.getMessage());
            field.setBorder(BorderFactory.createLineBorder(ThemeColors.error(), 2));
            return false;
        }
        right(field);
        return super.stopCellEditing();
    }

    @Override
    public void cancelCellEditing() {
        why.accept("");
        super.cancelCellEditing();
    }

    private void right(JTextField field) {
        why.accept("");
        field.setBorder(BorderFactory.createEmptyBorder(0, 5, 0, 5));
    }
}
