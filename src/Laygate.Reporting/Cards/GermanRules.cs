namespace Laygate.Reporting.Cards;

/// <summary>
/// German titles of the rules that a card can show, and for those of safety what to do: number, title and, behind a bar, the remedy. Terms as
/// the German rules of the trade use them: Unterlage, Einbautemperatur, Verdichtungszeit, Abstreusplitt, Verkehrsfreigabe, Sicherungsbereich.
/// </summary>
internal static class GermanRules
{
    /// <summary>What a rule has the crew watch on site and, behind the bar, what to do otherwise; the limit stands between the two.</summary>
    public const string OnSite = """
        WEA-001 = Unterlage, mit Infrarotthermometer | Kälter: nicht darauf einbauen. Schichtleitung verständigen.
        WEA-002 = Luft im Schatten | Kälter: nicht einbauen. Schichtleitung verständigen.
        WEA-003 = Unterlage, mit Auge und Hand | Nasser oder gefroren: nicht darauf einbauen. Erst trocknen.
        WEA-004 = Unterlage, wärmer als der Taupunkt um | Weniger: Einbau anhalten. Unterlage trocknen oder warten und die Schichtleitung fragen.
        WEA-006 = Mischgut hinter der Bohle, mit Einstechfühler | Kälter: Fertiger anhalten. Vor dem Weiterbauen fragen.
        WEA-008 = Wind an der Schicht, mit Handanemometer | Stärker: nicht weiter laden. Vor dem Weiterbauen die Schichtleitung fragen.
        MIX-004 = Ladung am Fertiger, mit Einstechfühler | Kälter: nicht kippen. Schichtleitung fragen.
        MIX-005 = Ladung am Mischwerk, mit Einstechfühler | Heißer: nicht abschicken. Schichtleitung fragen.
        MIX-007 = Mischgut hinter der Bohle, mit Einstechfühler | Kälter: Fertiger anhalten. Vor dem Weiterbauen fragen.
        MIX-013 = Modifiziertes Mischgut hinter der Bohle, mit Einstechfühler | Kälter: Fertiger anhalten. Vor dem Weiterbauen fragen.
        ROL-001 = Letzter verdichtender Übergang, hinter der Bohle | Später: dort nicht weiter verdichten, Stelle markieren, Schichtleitung verständigen.
        ROL-007 = Abstand zweier Schläge der Bandage, Geschwindigkeit durch Frequenz | Größer: langsamer fahren.
        ROL-011 = Bei Vibration: Kern mit Einstechfühler heißer als die Oberfläche um | Mehr: Vibration ausschalten und fragen.
        ROL-012 = Erster Übergang, hinter der Bohle | Später: zur Bohle aufschließen.
        ROL-013 = Schicht beim ersten Übergang, mit Einstechfühler | Heißer: mit dem ersten Übergang warten.
        ROL-018 = Bei Vibration: Schicht innen, mit Einstechfühler | Kälter: Vibration ausschalten.
        ROL-019 = Oberfläche beim letzten Glattwalzen, mit Infrarotthermometer | Kälter: nicht weiter walzen. Spuren gehen nicht mehr heraus.
        BON-021 = Erster Rand, wenn der zweite Fertiger kommt, mit Einstechfühler | Kälter: kalte Naht herstellen. Rand schneiden und anstreichen.
        BON-022 = Untere Schicht, wenn die obere kommt, mit Einstechfühler | Kälter: oberen Fertiger anhalten und fragen.
        FRI-002 = Freigabe, nachdem die ganze Länge liegt | Früher: gesperrt lassen.
        FRI-003 = Freigabe, nachdem die ganze Länge liegt | Früher: gesperrt lassen.
        FRI-004 = Freigabe, nachdem die ganze Länge liegt | Früher: gesperrt lassen.
        FRI-007 = Letzter Abstreusplitt, hinter der letzten Bohle | Später, oder die Oberfläche hält ihn nicht: nicht weiter streuen, Loses abkehren, Schichtleitung verständigen.
        FRI-008 = Oberfläche bei der Freigabe, mit Infrarotthermometer | Heißer: gesperrt lassen.
        SUP-011 = Alter der Ladung am Fertiger, laut Lieferschein | Älter: messen. Vor dem Kippen die Schichtleitung fragen.
        SUP-012 = Alter der Ladung am Fertiger, laut Lieferschein | Älter: zurückweisen.
        """;

    public const string Table = """
        FRI-002 = Verkehrsfreigabe, solange die heißen Schichten innen noch weich sind
        FRI-003 = Verkehrsfreigabe der Deckschicht vor Ablauf der vorgeschriebenen Stunden
        FRI-004 = Verkehrsfreigabe des heiß auf heiß eingebauten Schichtenpaars vor Ablauf der vorgeschriebenen Stunden
        FRI-007 = Abstreuen zu spät: Die Oberfläche hält den Splitt nicht mehr
        MIX-007 = Einbautemperatur unter dem vorgeschriebenen Wert
        MIX-013 = Einbautemperatur von Mischgut mit modifiziertem Bindemittel zu niedrig für das Verdichten
        ROL-001 = Letzter verdichtender Übergang nach Ende der Verdichtungszeit
        ROL-007 = Schlagabstand der vibrierenden Bandage zu groß
        ROL-011 = Vibration bei steifer Oberfläche über heißem Kern: Unterschied zu groß
        SUP-011 = Mischgut beim Einbau zu alt
        SUP-012 = Mischgut beim Einbau älter, als der Plan zulässt
        WEA-001 = Unterlage zu kalt für die Dicke der Schicht
        WEA-002 = Luft zu kalt für diese Schicht
        WEA-003 = Unterlage nicht trocken
        WEA-004 = Tau auf der Unterlage möglich: Abstand zum Taupunkt zu klein
        WEA-006 = Einbautemperatur zu niedrig für diese Unterlage und diese Dicke
        SAF-069 = Seitlicher Sicherheitsabstand unter dem deutschen Tabellenwert | Sperrung verbreitern, zulässige Geschwindigkeit senken, stärker abtrennen oder die Straße voll sperren.
        SAF-070 = Seitlicher Sicherheitsabstand unter dem britischen Wert | Sperrung verbreitern, zulässige Geschwindigkeit senken oder die Straße voll sperren.
        SAF-071 = Zu wenig Platz zum Stehen neben der Maschine | Sperrung verbreitern, die Straße voll sperren oder die Bohle von der anderen Seite bedienen.
        SAF-072 = Schicht, Stehbereich und Sicherheitsabstand passen nicht in die Sperrung | Breiter sperren, schmaler einbauen oder die Straße voll sperren.
        SAF-073 = Offener Fahrstreifen schmaler, als die britische Regel zulässt | Mehr Breite freigeben oder die Straße voll sperren.
        SAF-074 = Verziehung kürzer als nach der US-Formel | Verlängern oder die zulässige Geschwindigkeit senken.
        SAF-075 = Sicherheitsabstand in Längsrichtung kürzer als die Haltesichtweite | Verlängern oder die zulässige Geschwindigkeit senken.
        SAF-077 = Gekippte Mulde näher an der Freileitung als die deutschen Abstände | An anderer Stelle kippen, Abschiebefahrzeuge nehmen oder die Leitung freischalten lassen.
        SAF-078 = Gekippte Mulde näher an der Freileitung als der US-Abstand | An anderer Stelle kippen, Abschiebefahrzeuge nehmen oder die Leitung freischalten lassen.
        SAF-079 = Mulden werden näher an einer Freileitung gekippt, als britische Netzbetreiber zulassen | An anderer Stelle kippen oder den Netzbetreiber um Freischalten oder Verlegen bitten.
        SAF-081 = Verbrennung wird weniger als 20 Minuten gekühlt | Mindestens 20 Minuten mit Wasser kühlen.
        SAF-083 = Ein Schritt der Ersten Hilfe schadet | Den Schritt streichen. Bitumen entfernt nur medizinisches Personal.
        SAF-084 = Eis auf Verbrennungen; die Merkblätter sind sich nicht einig | Mit Wasser kühlen, nicht mit Eis.
        SAF-085 = Auge wird weniger als 20 Minuten gespült | Mindestens 20 Minuten mit sauberem Wasser spülen; angeben, wo es steht.
        SAF-086 = Beleuchtung unter dem Wert der US-Bundesvorschrift | Leuchten ergänzen und vor Beginn mit dem Luxmeter nachmessen.
        SAF-087 = Beleuchtung unter dem Wert einer Vorschrift aus Michigan | Leuchten ergänzen und vor Beginn mit dem Luxmeter nachmessen.
        SAF-088 = Beleuchtung unter dem Wert einer Vorschrift aus Maine | Leuchten ergänzen und vor Beginn mit dem Luxmeter nachmessen.
        SAF-089 = Beleuchtung neben offenem Fahrstreifen unter dem Wert einer Vorschrift aus Iowa | Leuchten ergänzen und vor Beginn mit dem Luxmeter nachmessen.
        SAF-090 = Beleuchtung unter dem Richtwert für diese Arbeit | Leuchten ergänzen und vor Beginn mit dem Luxmeter nachmessen.
        SAF-091 = Dämpfe und Aerosole aus Bitumen über dem deutschen Grenzwert | Kühler einbauen, Absaugung des Fertigers einschalten, auf der Seite stehen, von der der Wind kommt. Atemschutz zuletzt.
        SAF-092 = Quarzstaub oder Dieselabgase über dem Grenzwert der EU | Gegen Staub an der Fräswalze Wasser und Absaugung. Gegen Ruß Motoren beim Warten aus, emissionsarme Maschinen, bewegte Luft. Atemschutz zuletzt.
        SAF-093 = Dämpfe oder Quarzstaub über dem britischen Grenzwert | Gegen Dämpfe kühler einbauen und an der Bohle absaugen; gegen Staub an der Fräswalze Wasser und Absaugung. Atemschutz zuletzt.
        SAF-094 = Quarzstaub über dem US-Grenzwert | Wasser und Absaugung an der Fräswalze, nass oder saugend kehren, niemand im Staub. Atemschutz zuletzt.
        SAF-095 = Asphaltdämpfe über dem Wert, den US-Stellen empfehlen | Kühler einbauen, Absaugung des Fertigers einschalten, auf der Seite stehen, von der der Wind kommt. Atemschutz zuletzt.
        SAF-101 = Hand-Arm-Vibration über dem britischen Wert | Der Polier kürzt die Zeit am Gerät, lässt wechseln und ein vibrationsarmes Gerät holen.
        SAF-102 = Hand-Arm-Vibration über dem Wert der EU | Der Polier kürzt die Zeit am Gerät, lässt wechseln und ein vibrationsarmes Gerät holen.
        SAF-103 = Ganzkörper-Vibration über dem britischen Wert | Der Polier kürzt die Zeit auf der Maschine, lässt Sitz und Geschwindigkeit einstellen und die Fahrer wechseln.
        SAF-104 = Ganzkörper-Vibration über dem Wert der EU | Der Polier kürzt die Zeit auf der Maschine, lässt Sitz und Geschwindigkeit einstellen und die Fahrer wechseln.
        SAF-105 = Klasse der Warnkleidung zu niedrig für die Geschwindigkeit des Verkehrs | Der Polier gibt die Klasse aus, die zur Geschwindigkeit gehört; eine höhere bei schlechtem Wetter, dichtem Verkehr oder unruhigem Hintergrund.
        SAF-106 = Leitkegel weiter auseinander, als die britische Regel zulässt | Die Verkehrssicherung stellt mehr Leitkegel und geht die Reihe jede Stunde ab.
        SAF-107 = Behelfsgehweg schmaler, als die britische Regel zulässt | Die Verkehrssicherung verbreitert den Weg oder führt die Fußgänger mit einer Querung auf die andere Seite.
        SAF-108 = Sauerstoff in umschlossenem Raum außerhalb der kalifornischen Grenzen | Wer das Gaswarngerät beobachtet, stellt die Arbeit ein und schickt alle hinaus; niemand geht zurück, bevor belüftet und neu gemessen ist.
        SAF-109 = Luft in umschlossenem Raum langsamer, als Kalifornien verlangt | Wer die Lüftung verantwortet, stellt mehr Lüfter auf, schickt Maschinen hinaus oder lässt kühler einbauen.
        SAF-120 = Der Plan verneint eine Gefahr, die seine eigenen Angaben zeigen | Die Angabe zur Baustelle oder die Daten berichtigen, die ihr widersprechen. Bis dahin gilt die Gefahr als vorhanden.
        SAF-121 = Der Plan verneint einen Umstand, den seine eigenen Angaben zeigen | Die Angabe zur Baustelle oder die Daten berichtigen, die ihr widersprechen. Bis dahin gilt der Umstand als gegeben.
        SAF-130 = Der Plan verneint einen Umstand, den er selbst offenlässt | Ergänzen, was fehlt (Art des Hindernisses, Tag des Fräsens), oder den Umstand bejahen und die Maßnahmen planen.
        SAF-131 = Weniger Abstand zum Verkehr, als irgendeine hier bekannte Tabelle zulässt | Sperrung verbreitern, zulässige Geschwindigkeit senken, stärker abtrennen oder die Straße voll sperren.
        SAF-132 = Weniger Platz zum Stehen, als irgendeine hier bekannte Regel zulässt | Sperrung verbreitern, die Straße voll sperren oder die Bohle von der anderen Seite bedienen.
        SAF-133 = Offener Fahrstreifen schmaler als jeder hier bekannte Grenzwert | Mehr Breite freigeben oder die Straße voll sperren.
        SAF-134 = Gehweg schmaler als die kleinste hier bekannte Breite | Den Weg verbreitern oder die Fußgänger mit einer Querung auf die andere Seite führen.
        SAF-135 = Gekippte Mulde näher an der Freileitung als jeder hier bekannte Abstand | An anderer Stelle kippen, Abschiebefahrzeuge nehmen oder die Leitung freischalten lassen.
        SAF-136 = Sauerstoff in umschlossenem Raum außerhalb der einzigen hier bekannten Grenzen | Alle hinaus, lüften und neu messen, bevor jemand zurückgeht.
        SAF-137 = Luft in umschlossenem Raum langsamer als der einzige hier bekannte Grenzwert | Mehr Lüfter aufstellen, weniger Maschinen hineinlassen oder kühler einbauen.
        SAF-138 = Hand-Arm-Vibration über dem Wert, ab dem in Europa gehandelt wird | Der Polier kürzt die Zeit am Gerät, lässt wechseln und ein vibrationsarmes Gerät holen.
        SAF-139 = Ganzkörper-Vibration über dem Wert, ab dem in Europa gehandelt wird | Der Polier kürzt die Zeit auf der Maschine, lässt Sitz und Geschwindigkeit einstellen und die Fahrer wechseln.
        SAF-140 = Dämpfe und Aerosole aus Bitumen über dem einzigen hier bekannten Grenzwert | Kühler einbauen, Absaugung des Fertigers einschalten, auf der Seite stehen, von der der Wind kommt. Atemschutz zuletzt.
        SAF-141 = Asphaltdämpfe über dem, was andere Länder zulassen oder empfehlen | Kühler einbauen, Absaugung des Fertigers einschalten, auf der Seite stehen, von der der Wind kommt. Atemschutz zuletzt.
        SAF-142 = Lösliche Asphaltdämpfe über dem Wert, den eine US-Stelle empfiehlt | Kühler einbauen, Absaugung des Fertigers einschalten, auf der Seite stehen, von der der Wind kommt. Atemschutz zuletzt.
        SAF-143 = Quarzstaub über dem niedrigsten hier bekannten Grenzwert | Wasser und Absaugung an der Fräswalze, nass oder saugend kehren, niemand im Staub. Atemschutz zuletzt.
        SAF-144 = Dieselruß über dem einzigen hier bekannten Grenzwert | Motoren beim Warten aus, emissionsarme Maschinen, bewegte Luft. Atemschutz zuletzt.
        SAF-145 = Der Einweiser hat noch eine andere Aufgabe | Jemanden benennen, der nichts anderes tut, solange Lkw rückwärts fahren.
        SAF-146 = Alle sollen tun, was eine Person tun muss | Eine Person benennen und wer sie ablöst.
        SAF-122 = Ein Hindernis ist beschrieben, aber nicht seine Art | Zu jedem Hindernis die Art angeben.
        """;
}
