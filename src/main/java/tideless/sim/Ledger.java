package tideless.sim;

import java.util.List;

/**
 * Where something came from and where it went over a run: start + in = end + out.
 *
 * @param name "water", or the component's symbol
 * @param unit "m3" or "mol"
 * @param start in all trays and reservoirs at the start
 * @param in each way in, with its total
 * @param end in all trays and reservoirs at the end
 * @param out each way out, with its total
 */
public record Ledger(
        String name, String unit, double start, List<Entry> in, double end, List<Entry> out) {

    public Ledger {
        in = List.copyOf(in);
        out = List.copyOf(out);
    }

    /**
     * One way in or out.
     *
     * @param what "refills", "hand top-ups", "transpired", ...
     * @param amount its total, in the ledger's unit, at least 0
     */
    public record Entry(String what, double amount) {}

    /** start + in - end - out, in the ledger's unit; 0 but for rounding. */
    public double residual() {
        return total(start, in) - total(end, out);
    }

    /**
     * The residual as a share of all that passed: |residual| / (start + in), or 0 when nothing did.
     */
    public double relativeResidual() {
        double passed = total(start, in);
        return passed > 0 ? Math.abs(residual()) / passed : Math.abs(residual());
    }

    private static double total(double stock, List<Entry> entries) {
        double sum = stock;
        for (Entry entry : entries) {
            sum += entry.amount();
        }
        return sum;
    }
}
