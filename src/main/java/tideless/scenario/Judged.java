package tideless.scenario;

/**
 * How far a crop of the library was held beside what is published and did not set its numbers.
 *
 * @param trials published trials of known authors
 * @param figures of these trials
 * @param met of these, how many ours has inside their band
 * @param handbook figures besides, of no known author or from memory of handbooks
 * @param handbookMet of these figures, how many ours has inside their band
 * @param houses measured stands that its thirst was run on by day; they also chose its form
 */
public record Judged(int trials, int figures, int met, int handbook, int handbookMet, int houses) {
    /** Of a line of the library's table: crop, then these, parted by commas. */
    static Judged of(String line) {
        String[] cells = line.split(",");
        return new Judged(
                number(cells[1]),
                number(cells[2]),
                number(cells[3]),
                number(cells[4]),
                number(cells[5]),
                number(cells[6]));
    }

    private static int number(String cell) {
        return Integer.parseInt(cell.strip());
    }
}
