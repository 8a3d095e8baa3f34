package tideless.scenario;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import tideless.physics.HumidAir;
import tideless.physics.Light;
import tideless.physics.Time;
import tideless.rig.InsideAir;

/**
 * Air and light measured at the plants from a CSV file, as hourly means of a run.
 *
 * <p>Rows may be as close as the logger wrote them: {@link InsideRows} makes hours of them.
 */
final class InsideFile {
    static final String HUMIDITY = "humidity";
    static final String DEFICIT = "deficit";
    private static final String VAPOUR = "vapour_pressure";
    private static final String PPFD = "ppfd";
    private static final String PAR = "par";
    private static final String GLOBAL = "global";
    static final String LAMP = "lamp";

    private static final List<String> MOISTURE = List.of(HUMIDITY, DEFICIT, VAPOUR);
    private static final List<String> LIGHT = List.of(PPFD, PAR, GLOBAL);
    private static final List<String> NEEDED = List.of("time", "temperature");
    private static final List<String> OPTIONAL =
            List.of(
                    HUMIDITY,
                    DEFICIT,
                    VAPOUR,
                    PPFD,
                    PAR,
                    GLOBAL,
                    LAMP,
                    "co2",
                    "air_speed",
                    "solution_temperature");

    /** What the light column saw. */
    enum LightFrom {
        SUN("sun"),
        LAMPS("lamps"),
        BOTH("sun and lamps");

        final String spelling;

        LightFrom(String spelling) {
            this.spelling = spelling;
        }
    }

    /**
     * What the scenario says of the file.
     *
     * @param named the file's own names of some columns
     * @param gaps which gaps are filled
     * @param rigOffsetS the rig's clock less UTC, s; absent when the scenario does not tell it
     * @param lightFrom what the light column saw
     * @param lamps kind of the house's lamps
     * @param lampsFullUmolPerM2S their photon flux density at full level, if told
     * @param co2Ppm carbon dioxide where the file has none, umol/mol
     * @param airSpeedMPerS air speed where the file has none, m/s
     * @param stated keys of the climate that the user wrote
     */
    record Rules(
            Map<String, CsvColumns.Named> named,
            Gaps gaps,
            Read<Integer> rigOffsetS,
            LightFrom lightFrom,
            LampType lamps,
            Read<Double> lampsFullUmolPerM2S,
            double co2Ppm,
            double airSpeedMPerS,
            Set<String> stated) {}

    private final CsvColumns csv;
    private final TomlFile source;
    private final Rules rules;
    private final InsideRows rows;

    private InsideFile(CsvColumns csv, TomlFile source, Rules rules) {
        this.csv = csv;
        this.source = source;
        this.rules = rules;
        rows = new InsideRows(csv, source, rules.gaps());
    }

    /** Every column that inside air or weather may have. */
    static List<String> columns() {
        List<String> all = new ArrayList<>(NEEDED);
        all.addAll(OPTIONAL);
        for (String column : WeatherFile.COLUMNS) {
            if (!all.contains(column)) {
                all.add(column);
            }
        }
        all.add(WeatherFile.RAIN);
        return all;
    }

    static boolean knows(String column) {
        return NEEDED.contains(column) || OPTIONAL.contains(column);
    }

    static Read<InsideAir> read(
            NamedFiles.Named file, TomlFile source, LocalDate start, int days, Rules rules) {
        Read<CsvColumns> table =
                CsvColumns.of(
                        file.label(),
                        file.text(),
                        source,
                        new CsvColumns.Wanted(NEEDED, OPTIONAL, rules.named()));
        if (!table.isSound()) {
            return Read.faulty();
        }
        CsvColumns csv = table.value();
        InsideFile inside = new InsideFile(csv, source, rules);
        String moisture = inside.oneOf(MOISTURE);
        String light = inside.oneOf(LIGHT);
        inside.sayUnused(light);
        if (moisture.isEmpty()) {
            csv.problem(
                    csv.nameLine(),
                    1,
                    HUMIDITY,
                    "no column of moisture",
                    "one of humidity, deficit, vapour_pressure",
                    "Maybe name it in [climate.columns], as humidity = \"RH in %\".");
        }
        Read<Integer> offsetS = inside.fileOffsetS();
        if (!inside.knowsUnits(moisture, light) || !offsetS.isSound() || moisture.isEmpty()) {
            return Read.faulty();
        }
        boolean good =
                inside.lightFits(light)
                        && inside.load(moisture, light, offsetS.value(), start, days)
                        && inside.fill();
        if (!good) {
            return Read.faulty();
        }
        InsideAir air = inside.air(moisture, light, WeatherFile.named(file));
        if (!rules.stated().contains("light_from") && SensorCheck.seesLamps(air)) {
            source.note(
                    new Note(
                            csv.label(),
                            csv.nameLine(),
                            light,
                            "never darker than the lamps while they burn; a sensor that sees them"
                                    + " counts them twice: light_from = \"sun and lamps\" takes them"
                                    + " off, \"sun\" says that it does not"));
        }
        return Read.of(air);
    }

    /** The first of some columns that is there; says that the others are not used. */
    private String oneOf(List<String> names) {
        String first = "";
        for (String name : names) {
            if (csv.has(name) && first.isEmpty()) {
                first = name;
            } else if (csv.has(name)) {
                source.note(
                        new Note(csv.label(), csv.nameLine(), name, "not used beside " + first));
            }
        }
        return first;
    }

    /** Says which keys of the climate this file leaves without use. */
    private void sayUnused(String light) {
        boolean burns = csv.has(LAMP) || !light.isEmpty() && rules.lightFrom() != LightFrom.SUN;
        sayUnused("co2", csv.has("co2"), "the file has a column of it");
        sayUnused("air_speed", csv.has("air_speed"), "the file has a column of it");
        sayUnused("light_from", light.isEmpty(), "the file has no column of light");
        sayUnused("lamps_type", !burns, "the file records no lamps");
        sayUnused(
                "lamps_full",
                !csv.has(LAMP) || lampIsFlux(),
                csv.has(LAMP)
                        ? "the column lamp holds light itself"
                        : "the file has no column lamp");
    }

    private void sayUnused(String key, boolean isUnused, String why) {
        if (isUnused && rules.stated().contains(key)) {
            source.note(
                    new Note(csv.label(), csv.nameLine(), "climate." + key, "not used: " + why));
        }
    }

    /** The clock of the file's times less the rig's, s. */
    private Read<Integer> fileOffsetS() {
        if (csv.unit("time").isEmpty()) {
            source.note(
                    new Note(
                            csv.label(),
                            csv.nameLine(),
                            "time",
                            "no zone is stated: taken as the rig's own clock"));
            return Read.of(0);
        }
        if (csv.unit("time").equals("local")) {
            return Read.of(0);
        }
        Read<Integer> offsetS = WeatherFile.offsetS(csv, rules.rigOffsetS());
        if (offsetS.isSound() && rules.rigOffsetS().isAbsent()) {
            csv.problem(
                    csv.unitLine(),
                    1,
                    "time",
                    Key.quoted(TomlFile.shown(csv.unit("time"))),
                    "\"local\", where the scenario does not tell the rig's own clock",
                    "Maybe add utc_offset = \"+01:00\" to [place].");
            return Read.faulty();
        }
        return offsetS.map(file -> file - rules.rigOffsetS().value());
    }

    private boolean knowsUnits(String moisture, String light) {
        boolean known = csv.knows("temperature", List.of(UnitTable.TEMPERATURE));
        known &= !moisture.equals(HUMIDITY) || knowsShare(HUMIDITY);
        if (moisture.equals(DEFICIT) || moisture.equals(VAPOUR)) {
            known &= csv.knows(moisture, List.of(UnitTable.PRESSURE, UnitTable.VAPOUR_DENSITY));
        }
        known &= !light.equals(PPFD) || csv.knows(PPFD, List.of(UnitTable.PHOTON_FLUX));
        if (light.equals(PAR) || light.equals(GLOBAL)) {
            known &= csv.knows(light, List.of(UnitTable.IRRADIANCE));
        }
        if (csv.has(LAMP)) {
            known &=
                    csv.knows(
                            LAMP,
                            List.of(UnitTable.SHARE, UnitTable.PHOTON_FLUX, UnitTable.DURATION),
                            "fraction");
        }
        known &= !csv.has("co2") || csv.knows("co2", List.of(UnitTable.MIXING_RATIO));
        known &= !csv.has("air_speed") || csv.knows("air_speed", List.of(UnitTable.SPEED));
        return known
                & (!csv.has("solution_temperature")
                        || csv.knows("solution_temperature", List.of(UnitTable.TEMPERATURE)));
    }

    private boolean knowsShare(String column) {
        return csv.knows(column, List.of(UnitTable.SHARE), "fraction");
    }

    private boolean lampIsFlux() {
        return UnitTable.PHOTON_FLUX.spellings().contains(csv.unit(LAMP));
    }

    private boolean lampIsTime() {
        return UnitTable.DURATION.spellings().contains(csv.unit(LAMP));
    }

    /** Whether what the light columns hold can be told apart; says so when not. */
    private boolean lightFits(String light) {
        if (csv.has(LAMP) && !lampIsFlux() && !rules.lampsFullUmolPerM2S().isSound()) {
            csv.problem(
                    csv.unitLine(),
                    csv.place(LAMP),
                    LAMP,
                    "a level without the light it stands for",
                    "lamps_full in [climate], as lamps_full = \"187 umol/m2/s\"",
                    "");
        }
        if (rules.lightFrom() == LightFrom.BOTH && !csv.has(LAMP) && !light.isEmpty()) {
            csv.problem(
                    csv.nameLine(),
                    csv.place(light),
                    light,
                    "light of sun and lamps in one, and no column lamp to tell them apart",
                    "a column lamp beside light_from = \"sun and lamps\"",
                    "");
        }
        if (rules.lightFrom() == LightFrom.LAMPS && (csv.has(LAMP) || light.equals(GLOBAL))) {
            csv.problem(
                    csv.nameLine(),
                    csv.place(csv.has(LAMP) ? LAMP : light),
                    csv.has(LAMP) ? LAMP : light,
                    "a column beside light_from = \"lamps\"",
                    "one column ppfd or par, which is the lamps' light",
                    "");
        }
        return csv.isSound();
    }

    private boolean load(String moisture, String light, int fileAheadS, LocalDate start, int days) {
        if (!rows.place(fileAheadS, start, days)) {
            return false;
        }
        for (String column :
                List.of(
                        "temperature",
                        moisture,
                        light,
                        LAMP,
                        "co2",
                        "air_speed",
                        "solution_temperature")) {
            if (!column.isEmpty() && csv.has(column)) {
                rows.add(column, this::value, column.equals(LAMP) && lampIsTime());
            }
        }
        return csv.isSound();
    }

    private Read<Double> value(int row, String column) {
        return switch (column) {
            case "temperature" -> csv.value(row, column, UnitTable.TEMPERATURE, -20, 60);
            case "solution_temperature" -> csv.value(row, column, UnitTable.TEMPERATURE, -1, 60);
            // Sensors read a little above saturation and a little below darkness.
            case HUMIDITY -> atMostOne(csv.value(row, column, share(column), 0, 1.05));
            case DEFICIT, VAPOUR ->
                    isDensity(column)
                            ? atLeastNone(
                                    csv.value(row, column, UnitTable.VAPOUR_DENSITY, -1e-3, 0.1))
                            : atLeastNone(csv.value(row, column, UnitTable.PRESSURE, -100, 2e4));
            case PPFD -> atLeastNone(csv.value(row, column, UnitTable.PHOTON_FLUX, -10, 3000));
            case PAR -> atLeastNone(csv.value(row, column, UnitTable.IRRADIANCE, -10, 700));
            case GLOBAL -> atLeastNone(csv.value(row, column, UnitTable.IRRADIANCE, -20, 1500));
            case LAMP -> lampValue(row);
            case "co2" -> csv.value(row, column, UnitTable.MIXING_RATIO, 100, 10000);
            case "air_speed" -> csv.value(row, column, UnitTable.SPEED, 0, 20);
            default -> throw new IllegalArgumentException("no bounds for column " + column);
        };
    }

    static Read<Double> atMostOne(Read<Double> read) {
        return read.map(share -> Math.min(1, share));
    }

    static Read<Double> atLeastNone(Read<Double> read) {
        return read.map(value -> Math.max(0, value));
    }

    private Read<Double> lampValue(int row) {
        if (lampIsFlux()) {
            return csv.value(row, LAMP, UnitTable.PHOTON_FLUX, 0, 3000);
        }
        if (lampIsTime()) {
            return csv.value(row, LAMP, UnitTable.DURATION, 0, Time.HOUR_S)
                    .map(seconds -> seconds / Time.HOUR_S);
        }
        return atMostOne(csv.value(row, LAMP, share(LAMP), 0, 1.05));
    }

    private UnitTable share(String column) {
        return csv.unit(column).equals("fraction") ? UnitTable.FRACTION : UnitTable.SHARE;
    }

    private boolean isDensity(String column) {
        return UnitTable.VAPOUR_DENSITY.spellings().contains(csv.unit(column));
    }

    /** Fills gaps, and says what is odd; false, with a fault, when a gap stays. */
    private boolean fill() {
        if (rows.fill()) {
            rows.names().stream().filter(this::canBeOdd).forEach(this::sayOdd);
        }
        return csv.isSound();
    }

    /** What is checked by its usual numbers must stand in their unit. */
    private boolean canBeOdd(String column) {
        return !isDensity(column) && (!column.equals(LAMP) || !lampIsFlux() && !lampIsTime());
    }

    private void sayOdd(String column) {
        SensorCheck.odd(column, cut(column))
                .ifPresent(odd -> source.note(new Note(csv.label(), csv.unitLine(), column, odd)));
    }

    private InsideAir air(String moisture, String light, String named) {
        double[] tempC = cut("temperature");
        double[] vapour = cut(moisture);
        double[] lampPpfd = lampPpfd();
        int hours = rows.hours();
        double[] sunPar = new double[hours];
        if (!light.isEmpty() && rules.lightFrom() != LightFrom.LAMPS) {
            double[] measured = cut(light);
            for (int h = 0; h < hours; h++) {
                double lampPar =
                        rules.lightFrom() == LightFrom.BOTH ? sameAs(light, lampPpfd[h]) : 0;
                sunPar[h] = parWPerM2(light, Math.max(0, measured[h] - lampPar));
            }
        } else if (!light.isEmpty()) {
            lampPpfd = cut(light);
            for (int h = 0; h < hours && light.equals(PAR); h++) {
                lampPpfd[h] *= rules.lamps().light().umolPerJ();
            }
        }
        for (int h = 0; h < hours; h++) {
            vapour[h] = measuredPa(moisture, vapour[h], tempC[h]);
        }
        if (!moisture.equals(HUMIDITY)) {
            SensorCheck.beyondSaturation(vapour, tempC)
                    .ifPresent(
                            odd ->
                                    source.note(
                                            new Note(csv.label(), csv.unitLine(), moisture, odd)));
        }
        for (int h = 0; h < hours; h++) {
            vapour[h] = heldPa(moisture, vapour[h], tempC[h]);
        }
        Map<InsideAir.Quantity, double[]> air = new EnumMap<>(InsideAir.Quantity.class);
        air.put(InsideAir.Quantity.TEMP_C, tempC);
        air.put(InsideAir.Quantity.VAPOUR_PA, vapour);
        air.put(InsideAir.Quantity.SUN_PAR_W_PER_M2, sunPar);
        air.put(InsideAir.Quantity.LAMP_PPFD_UMOL_PER_M2_S, lampPpfd);
        air.put(InsideAir.Quantity.CO2_PPM, cutOr("co2", rules.co2Ppm()));
        air.put(InsideAir.Quantity.AIR_SPEED_M_PER_S, cutOr("air_speed", rules.airSpeedMPerS()));
        air.put(InsideAir.Quantity.SOLUTION_TEMP_C, cutOr("solution_temperature", Double.NaN));
        return new InsideAir(
                named,
                rules.gaps().filled(),
                air,
                csv.has(LAMP) || (!light.isEmpty() && rules.lightFrom() != LightFrom.SUN),
                rules.lamps().light().umolPerJ(),
                rules.lamps().light().nearInfraredPerPar());
    }

    private double[] lampPpfd() {
        if (!csv.has(LAMP)) {
            return new double[rows.hours()];
        }
        double[] lamp = cut(LAMP);
        for (int h = 0; h < lamp.length && !lampIsFlux(); h++) {
            lamp[h] = Math.min(1, lamp[h]) * rules.lampsFullUmolPerM2S().value();
        }
        return lamp;
    }

    /** What a light column shows of the lamps alone, in its own quantity. */
    private double sameAs(String light, double lampPpfd) {
        double par = lampPpfd / rules.lamps().light().umolPerJ();
        return switch (light) {
            case PPFD -> lampPpfd;
            case PAR -> par;
            default -> par * (1 + rules.lamps().light().nearInfraredPerPar());
        };
    }

    /** Sun of 400-700 nm, W/m2. */
    private static double parWPerM2(String light, double value) {
        return switch (light) {
            case PPFD -> Light.ppfdToWPerM2(value, Light.Source.SUN_AND_SKY);
            case PAR -> value;
            default -> value * Light.PAR_PER_GLOBAL_FRAC;
        };
    }

    /** A deficit or a vapour pressure as it was measured, Pa. */
    private double measuredPa(String moisture, double value, double tempC) {
        if (moisture.equals(HUMIDITY)) {
            return value * HumidAir.saturationPressurePa(tempC);
        }
        return isDensity(moisture)
                ? value * HumidAir.GAS_CONSTANT_VAPOUR_J_PER_KG_K * (tempC + 273.15)
                : value;
    }

    private static double heldPa(String moisture, double pa, double tempC) {
        double saturatedPa = HumidAir.saturationPressurePa(tempC);
        double held = moisture.equals(DEFICIT) ? saturatedPa - pa : pa;
        return Math.max(0, Math.min(held, saturatedPa));
    }

    private double[] cut(String column) {
        return rows.cut(column);
    }

    private double[] cutOr(String column, double otherwise) {
        if (csv.has(column)) {
            return cut(column);
        }
        double[] same = new double[rows.hours()];
        Arrays.fill(same, otherwise);
        return same;
    }
}
