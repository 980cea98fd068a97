namespace Laygate.Reporting.Html;

/// <summary>Style sheets of the pages. Tones of status (green, amber, red) mean nothing else, and never stand without their word and sign.</summary>
internal static class Styles
{
    /// <summary>The report.</summary>
    public const string Report = """
        :root{color-scheme:light;--ink:#1c2024;--soft:#4a5259;--line:#c3c9cd;--ground:#f3f4f5}
        *{box-sizing:border-box}
        html{font:16px/1.5 system-ui,"Segoe UI",Roboto,"Noto Sans","DejaVu Sans",sans-serif;color:var(--ink);background:#fff}
        body{margin:0 auto;max-width:76rem;padding:0 1.5rem 3rem;overflow-wrap:break-word}
        .skip{position:absolute;left:-99rem}
        .skip:focus{left:1rem;top:1rem;background:#fff;padding:.5rem;z-index:1}
        a{color:inherit}
        a:focus-visible,.scroll:focus-visible,summary:focus-visible{outline:3px solid #1c2024;outline-offset:2px}
        header{border-bottom:10px solid #2b3035;padding:.7rem 0 .5rem;box-shadow:0 5px 0 #9aa2a8;display:flex;flex-wrap:wrap;align-items:baseline;gap:0 1rem}
        .brand{margin:0;color:var(--soft);letter-spacing:.04em}
        h1{margin:0;font-size:1.25rem;line-height:1.3}
        h2{font-size:1.6rem;line-height:1.25;margin:1rem 0 .3rem}
        h3{font-size:1.25rem;margin:1.5rem 0 .5rem}
        .first h3{font-size:1.1rem;margin:1rem 0 .3rem}
        h4{font-size:1.1rem;margin:1.8rem 0 .6rem;border-bottom:3px solid var(--ink);padding-bottom:.2rem}
        h5{font-size:1rem;margin:0 0 .3rem}
        nav{margin-top:.7rem;font-size:.92rem}
        nav ul{display:flex;flex-wrap:wrap;gap:0 1.3rem;list-style:none;margin:0;padding:0}
        nav a{display:inline-block;padding:.25rem 0;min-height:24px}
        p{margin:.4rem 0}
        .tally,.quiet,.legend,.id,.reads{color:var(--soft);font-weight:normal}
        .tally{font-size:.9rem;margin-left:.6rem}
        .id{white-space:nowrap}
        .ident{display:grid;grid-template-columns:max-content 1fr;gap:.15rem 1rem;margin:.6rem 0}
        dt{color:var(--soft)}
        dd{margin:0}
        .hash{font-family:ui-monospace,"DejaVu Sans Mono",monospace;font-size:.85em;word-break:break-all}
        .identity{color:var(--soft);margin:0 0 .5rem}
        .verdict{margin:.3rem 0;padding:.35rem .7rem;border:2px solid currentColor}
        .verdict strong{font-size:1.4rem;line-height:1.2}
        .verdict .counts{font-size:.92rem;color:var(--ink)}
        .verdict.fail{color:#8f1710;background:#fdeceb}
        .verdict.warn{color:#6b4200;background:#fff2d6}
        .verdict.pass{color:#14522c;background:#e7f4eb}
        .counts{display:flex;flex-wrap:wrap;gap:.2rem 1.1rem;list-style:none;margin:.5rem 0;padding:0}
        .number{font-weight:600;font-variant-numeric:tabular-nums}
        .counts .none{color:var(--soft)}
        .counts .none .mark{color:#4a5259;background:#fff}
        .mark{white-space:nowrap;font-weight:600;font-size:.9rem;padding:0 .35rem;border-radius:2px;border:1px solid currentColor;align-self:flex-start}
        .mark.fail{color:#8f1710;background:#fdeceb}
        .mark.warn{color:#6b4200;background:#fff2d6}
        .mark.pass{color:#14522c;background:#e7f4eb}
        .mark.plain{color:#333a40;background:#f3f4f5}
        .note{border-left:4px solid var(--ink);padding-left:.7rem}
        .deciding{padding-left:1.4rem;margin:.3rem 0}
        .deciding li{margin:.3rem 0}
        .do{color:var(--soft)}
        .caution{margin:.4rem 0}
        .hours{width:auto}
        .hours th[scope=row]{min-width:14rem;max-width:34rem;padding:.15rem .5rem;font-weight:normal}
        .verdict{display:flex;flex-wrap:wrap;align-items:baseline;gap:.1rem 1.4rem}
        .verdict .counts{margin:0}
        .hours thead th,.hours td{min-width:3.6rem;text-align:right;padding:.15rem .4rem}
        .hours thead th:first-child{text-align:left}
        .hours td.pass{color:#14522c;background:#e7f4eb}
        .hours td.warn{color:#6b4200;background:#fff2d6;font-weight:600}
        .hours td.fail{color:#8f1710;background:#fdeceb;font-weight:600}
        .hours .sign{font-size:.75em;margin-right:.15rem}
        .pair{display:flow-root}
        .pair .figures{float:right;width:52%;margin:0 0 .6rem 1.4rem}
        .single .cards{columns:2 30rem;column-gap:1.2rem}
        .single .cards .finding:only-child{column-span:all}
        .single .figures{display:grid;grid-template-columns:repeat(auto-fill,minmax(min(100%,32rem),1fr));gap:0 1.6rem}
        .finding{border:1px solid var(--line);border-left:8px solid #6d767d;padding:.7rem .9rem;margin:0 0 .9rem;break-inside:avoid;display:flow-root}
        .finding.is-fail{border-left-color:#a52a1c}
        .finding.is-warn{border-left-color:#c98a00}
        .says{font-size:1.02rem}
        .finding dl{display:grid;grid-template-columns:4.6rem minmax(0,1fr);gap:.15rem .6rem;margin:.4rem 0 0;font-size:.92rem}
        .step{display:block}
        .margin{display:block;width:15rem;max-width:100%;height:auto;margin:.2rem 0}
        figure{margin:0 0 1.4rem;break-inside:avoid}
        figcaption{font-weight:600}
        .plot{display:block;width:100%;min-width:30rem;height:auto;font-family:inherit}
        .reads{font-size:.92rem}
        .scroll{overflow-x:auto;position:relative}
        details{font-size:.92rem}
        summary{min-height:24px;padding:.15rem 0;cursor:pointer}
        .wish{font-size:1rem}
        .wish>summary>h3{display:inline-block;margin-bottom:.4rem}
        .onpaper{display:none}
        table{border-collapse:collapse;width:100%;font-size:.9rem;margin:.4rem 0 1rem;font-variant-numeric:tabular-nums}
        caption{text-align:left;color:var(--soft);padding:.2rem 0}
        th,td{text-align:left;vertical-align:top;padding:.3rem .5rem;border-bottom:1px solid var(--line);font-weight:normal;min-width:4rem}
        thead th{background:var(--ground);font-weight:600;border-bottom:2px solid var(--ink)}
        tbody th{font-weight:600}
        .inputs th,.inputs td{padding:.1rem .5rem}
        .inputs tbody th{font-weight:normal;font-family:ui-monospace,"DejaVu Sans Mono",monospace;font-size:.92em}
        .line{display:block;margin-bottom:.25rem}
        .grade{margin:.8rem 0 .3rem}
        ul.silent{columns:2 30rem;column-gap:1.6rem;list-style:none;margin:.3rem 0;padding:0;font-size:.92rem}
        ul.silent li{break-inside:avoid;border-top:1px solid var(--line);padding:.4rem 0}
        ul.silent p{margin:.1rem 0}
        ul.sign{columns:2 26rem;column-gap:1.6rem;list-style:none;margin:.3rem 0;padding:0;font-size:.92rem}
        ul.sign li{break-inside:avoid;padding:.12rem 0 .12rem 1.4rem;text-indent:-1.4rem}
        .field{margin:.7rem 0 1.2rem;break-inside:avoid}
        .blank{display:inline-block;border-bottom:1px solid var(--ink);width:13rem;max-width:60%;height:1.4rem;margin-right:1rem}
        .blank.short{width:7rem}
        .unseen{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%);white-space:nowrap}
        footer{margin-top:3rem;border-top:3px solid var(--ink)}
        .unread{border:3px solid #8f1710;padding:0 1rem .6rem;margin-top:1.5rem}
        @media (max-width:68rem){.pair .figures{float:none;width:auto;margin-left:0}}
        @media (max-width:40rem){body{padding:0 .8rem 2rem}.id{white-space:normal}.hours th[scope=row]{min-width:9rem}.scroll th,.scroll td{padding:.25rem .3rem;font-size:.85rem}.ident,.finding dl{grid-template-columns:minmax(0,1fr)}.ident dt,.finding dt{font-size:.85rem}.finding{padding:.6rem .6rem}.finding dd{margin-bottom:.3rem}}
        @page{size:A4;margin:15mm 14mm 17mm;@bottom-right{content:"page " counter(page) " of " counter(pages);font-size:8pt}@bottom-left{content:"Laygate plan check";font-size:8pt}}
        @media print{
        html{font-size:9.5pt;print-color-adjust:exact;-webkit-print-color-adjust:exact}
        body{max-width:none;padding:0}
        nav,.skip{display:none}
        header{padding-top:0}
        .plan+.plan{break-before:page}
        .newpage{break-before:page}
        h2,h3,h4,h5,caption,figcaption,.legend,h3+.quiet{break-after:avoid}
        .drawn{break-inside:avoid}
        figure{break-inside:auto}
        thead{display:table-header-group}
        tr{break-inside:avoid}
        tbody tr:first-child{break-before:avoid}
        .scroll{overflow:visible}
        .plot{min-width:0}
        .pair{display:block}
        .subject{break-before:auto}
        .pair .figures{float:none;width:auto;margin:0}
        .single .cards,.pair .cards{columns:2;column-gap:5mm}
        .single .cards .finding:only-child,.pair .cards .finding:only-child{column-span:all}
        .finding{padding:1.2mm 2mm;margin:0 0 2mm;border-left-width:1.5mm}
        .finding h5{font-size:8.5pt;margin:0}
        .finding .says{font-size:8.5pt;margin:.4mm 0}
        .finding .margin{height:4mm;width:36mm;margin:0}
        .finding dl{font-size:7.5pt;line-height:1.3;gap:0 1.5mm;margin:.5mm 0 0}
        .finding .step{font-size:7pt;line-height:1.3}
        ul.silent{columns:2;column-gap:5mm;font-size:7.5pt;line-height:1.3}
        ul.silent li{padding:.8mm 0}
        ul.silent p{margin:.2mm 0}
        .mark{font-size:7pt;padding:0 .25rem}
        .always{font-size:8pt;line-height:1.3;columns:2;column-gap:6mm}
        .pair .figures,.single .figures{display:grid;grid-template-columns:repeat(2,minmax(0,1fr));gap:0 6mm}
        .figures figure:only-child,.figures figure:has(details[open]){grid-column:span 2}
        .figures figure{margin:0 0 2mm}
        figcaption{font-size:8.5pt}
        .reads{font-size:7pt;line-height:1.3}
        .plot{max-width:150mm}
        .ident{grid-template-columns:max-content 1fr}
        .finding dl{grid-template-columns:3.6rem minmax(0,1fr)}
        details:not([open]){display:none}
        details[open]>summary{list-style:none}
        .onpaper{display:block}
        .hours{font-size:7.5pt}
        .hours thead th,.hours td{min-width:0;padding:.3mm 1mm}
        .hours th[scope=row]{min-width:40mm}
        ul.sign{columns:2;column-gap:6mm;font-size:7.5pt;line-height:1.3}
        ul.sign li{padding-top:.2mm;padding-bottom:.2mm}
        .field{margin:3mm 0 4mm}
        .assumed{font-size:7.5pt;line-height:1.3}
        .assumed th,.assumed td{padding:.4mm 1mm}
        .values,.inputs{font-size:7.5pt}
        .inputs{line-height:1.3}
        .columns{columns:2;column-gap:6mm}
        .columns table{margin-top:0}
        .columns .inputs{overflow-wrap:anywhere}
        .columns .inputs th:first-child{width:2.4rem}
        .values tbody th,.columns .values td{white-space:nowrap}
        .rest,.conformity{font-size:8pt}
        .rest,.conformity,.inputs,.changes{table-layout:fixed}
        .rest th:first-child,.conformity .result{width:7.6rem}
        .rest th:nth-child(2){width:29%}
        .rest th:nth-child(3){width:17%}
        .conformity th:first-child{width:26%}
        .conformity.clauses th:first-child{width:11%}
        .conformity .by{width:11%}
        .conformity .about{width:21%}
        .conformity .known{width:13%}
        .inputs thead th:nth-child(2){width:52%}
        .first{font-size:.92em}
        h2{margin:1rem 0 .5rem}
        .first h3{margin:1rem 0 .4rem}
        .first .deciding li{margin:.25rem 0}
        .first table{margin-bottom:.4rem}
        .caution{font-size:.88em;break-inside:avoid}
        .values th,.values td,.inputs th,.inputs td{padding:.4mm 1.5mm}
        .columns .values th,.columns .values td{padding:.3mm .8mm}
        th,td{min-width:0}
        }
        """;
}
