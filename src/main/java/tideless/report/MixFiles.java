package tideless.report;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.core.util.Separators;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import tideless.solution.Component;
import tideless.solution.Composition;
import tideless.solution.Mix;
import tideless.solution.MixCorrection;
import tideless.solution.MixingSheet;

/** A mixing sheet as a page to print and as JSON. */
public final class MixFiles {
    /** Raised when a key is renamed, removed or changes its meaning. */
    private static final int FORMAT = 1;

    private MixFiles() {}

    /**
     * Writes {@code mix.html} and {@code mix.json}, both or none.
     *
     * @param folder where to; made when it is not there
     */
    public static WriteResult write(Mix mix, Path folder, ShownIn shown) {
        Map<String, byte[]> files = new LinkedHashMap<>();
        files.put("mix.html", shown.page(MixPage.of(mix, shown)).getBytes(StandardCharsets.UTF_8));
        files.put("mix.json", json(mix));
        try {
            return new WriteResult(OutputFolder.write(folder, files), "", false);
        } catch (OutputFolder.NotWritten e) {
            return new WriteResult(List.of(), e.getMessage(), false);
        }
    }

    static byte[] json(Mix mix) {
        StringWriter text = new StringWriter();
        try (JsonGenerator json = new JsonFactory().createGenerator(text)) {
            json.setPrettyPrinter(
                    new DefaultPrettyPrinter(
                                    Separators.createDefaultInstance()
                                            .withObjectFieldValueSpacing(Separators.Spacing.AFTER))
                            .withObjectIndenter(new DefaultIndenter("  ", "\n"))
                            .withArrayIndenter(new DefaultIndenter("  ", "\n")));
            write(json, mix);
        } catch (IOException e) {
            throw new UncheckedIOException(e); // A string takes all it is given.
        }
        return text.append('\n').toString().getBytes(StandardCharsets.UTF_8);
    }

    private static void write(JsonGenerator json, Mix mix) throws IOException {
        MixingSheet sheet = mix.sheet();
        json.writeStartObject();
        json.writeObjectFieldStart("program");
        json.writeStringField("name", "Tideless");
        json.writeStringField("version", ResultJson.version());
        json.writeEndObject();
        json.writeNumberField("format", FORMAT);
        json.writeObjectFieldStart("wish");
        number(json, "volume_L", mix.wish().volumeL());
        number(json, "ec_mS_per_cm", mix.wish().targetMsPerCm());
        number(json, "ph", mix.wish().targetPh().orElse(Double.NaN));
        json.writeStringField("water", mix.wish().water().id());
        json.writeEndObject();
        number(json, "strength", sheet.strength());
        steps(json, sheet.steps());
        number(json, "ec_mS_per_cm", sheet.ecMsPerCm());
        number(json, "ph", sheet.phClosed());
        number(json, "ph_in_air", sheet.phInAir());
        number(json, "standing_acid_millilitres", sheet.standingMillilitres());
        composition(json, sheet.composition());
        if (mix.correction().isPresent()) {
            MixCorrection correction = mix.correction().get();
            json.writeObjectFieldStart("correction");
            number(json, "read_ec_mS_per_cm", correction.reading().ecMsPerCm().orElse(Double.NaN));
            number(json, "read_ph", correction.reading().ph().orElse(Double.NaN));
            number(json, "vessel_L", correction.reading().vesselL());
            steps(json, correction.steps());
            number(json, "volume_L", correction.volumeL());
            number(json, "ec_mS_per_cm", correction.ecMsPerCm());
            number(json, "ph", correction.ph());
            number(json, "ph_in_air", correction.phInAir());
            number(json, "millilitres_to_hold_in_air", correction.inAirMillilitres());
            number(json, "water_by_the_straight_line_L", correction.stepRuleL());
            json.writeEndObject();
        }
        json.writeArrayFieldStart("cautions");
        for (String caution : MixWords.cautions(mix)) {
            json.writeString(caution);
        }
        json.writeEndArray();
        json.writeEndObject();
    }

    private static void steps(JsonGenerator json, List<MixingSheet.Step> steps) throws IOException {
        json.writeArrayFieldStart("steps");
        for (MixingSheet.Step step : steps) {
            json.writeStartObject();
            json.writeStringField("action", MixWords.action(step.kind()));
            json.writeStringField("what", step.what());
            number(json, "grams", step.grams());
            number(json, "millilitres", step.millilitres());
            number(json, "ec_mS_per_cm", step.ecMsPerCm());
            number(json, "ph", step.ph());
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    private static void composition(JsonGenerator json, Composition composition)
            throws IOException {
        json.writeObjectFieldStart("mmol_per_L");
        for (Component component : Component.values()) {
            number(json, component.symbol(), composition.molPerM3(component));
        }
        json.writeEndObject();
    }

    private static void number(JsonGenerator json, String key, double value) throws IOException {
        BigDecimal digits = SignificantDigits.ten(value);
        if (digits == null) {
            json.writeNullField(key);
        } else {
            json.writeNumberField(key, digits);
        }
    }
}
