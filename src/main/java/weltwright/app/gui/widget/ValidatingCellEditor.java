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
 * An editor of table cells that checks the text before the edit ends. A text that fails the check stays in the editor
 * with a red border, and its error goes to a listener; Escape cancels the edit.
 */
public final class ValidatingCellEditor extends DefaultCellEditor {
    private final transient Check check;
    private final transient Consumer<String> errorListener;
    private int row;
    private int column;

    /** Throws {@link UserFacingException} where a text is not valid for a cell. */
    public interface Check {
        void check(int row, int column, String text);
    }

    /** @param errorListener receives the error message, or the empty text once there is no error */
    public ValidatingCellEditor(Check check, Consumer<String> errorListener) {
        super(new JTextField());
        this.check = check;
        this.errorListener = errorListener;
        setClickCountToStart(1);
    }

    @Override
    public Component getTableCellEditorComponent(JTable table, Object value, boolean selected, int row, int column) {
        this.row = row;
        this.column = column;
        JTextField field = (JTextField) super.getTableCellEditorComponent(table, value, selected, row, column);
        field.setName("cell");
        field.getAccessibleContext().setAccessibleName(table.getColumnName(column));
        clearError(field);
        field.selectAll();
        return field;
    }

    @Override
    public boolean stopCellEditing() {
        JTextField field = (JTextField) getComponent();
        try {
            check.check(row, column, field.getText());
        } catch (UserFacingException e) {
            errorListener.accept(e.getMessage());
            field.setBorder(BorderFactory.createLineBorder(ThemeColors.error(), 2));
            return false;
        }
        clearError(field);
        return super.stopCellEditing();
    }

    @Override
    public void cancelCellEditing() {
        errorListener.accept("");
        super.cancelCellEditing();
    }

    private void clearError(JTextField field) {
        errorListener.accept("");
        field.setBorder(BorderFactory.createEmptyBorder(0, 5, 0, 5));
    }
}
