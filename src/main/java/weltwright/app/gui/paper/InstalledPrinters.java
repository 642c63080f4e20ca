package weltwright.app.gui.paper;

import java.util.List;
import java.util.Optional;
import javax.print.DocFlavor;
import javax.print.PrintService;
import javax.print.PrintServiceLookup;

/**
 * The printers that this computer knows and that can print pages.
 *
 * @param all in the system's order
 * @param standard the one that the system prints on unless told otherwise; empty where it names none
 */
public record InstalledPrinters(List<PrintService> all, Optional<PrintService> standard) {
    static final InstalledPrinters NONE = new InstalledPrinters(List.of(), Optional.empty());

    public InstalledPrinters {
        all = List.copyOf(all);
    }

    /** Asks the system; may take seconds where printers are on a network. */
    public static InstalledPrinters find() {
        return new InstalledPrinters(
                List.of(PrintServiceLookup.lookupPrintServices(DocFlavor.SERVICE_FORMATTED.PAGEABLE, null)),
                Optional.ofNullable(PrintServiceLookup.lookupDefaultPrintService()));
    }

    /** Returns the printer of a name, else the system's own choice, else the first; empty where there is none. */
    public Optional<PrintService> named(String name) {
        return all.stream()
                .filter(printer -> printer.getName().equals(name))
                .findFirst()
                .or(() -> standard.filter(all::contains))
                .or(() -> all.stream().findFirst());
    }
}
