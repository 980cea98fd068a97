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
        header{border-bottom:10px solid #2b3035;padding:1.5rem 0 .7rem;box-shadow:0 5px 0 #9aa2a8}
        .brand{margin:0;color:var(--soft);letter-spacing:.04em}
        h1{margin:0;font-size:1.9rem;line-height:1.2}
        h2{font-size:1.6rem;line-height:1.25;margin:2.2rem 0 .8rem}
        h3{font-size:1.25rem;margin:2rem 0 .6rem}
        h4{font-size:1.1rem;margin:1.8rem 0 .6rem;border-bottom:3px solid var(--ink);padding-bottom:.2rem}
        h5{font-size:1rem;margin:0 0 .3rem}
        nav{margin-top:1.3rem}
        nav ul{display:flex;flex-wrap:wrap;gap:.2rem 1.4rem;list-style:none;margin:0;padding:0}
        nav a{display:inline-block;padding:.25rem 0;min-height:24px}
        p{margin:.4rem 0}
        .tally,.quiet,.legend,.id,.reads{color:var(--soft);font-weight:normal}
        .tally{font-size:.9rem;margin-left:.6rem}
        .id{white-space:nowrap}
        .ident{display:grid;grid-template-columns:max-content 1fr;gap:.15rem 1rem;margin:.6rem 0}
        dt{color:var(--soft)}
        dd{margin:0}
        .hash{font-family:ui-monospace,"DejaVu Sans Mono",monospace;font-size:.85em;word-break:break-all}
        .counts{display:grid;grid-template-columns:repeat(8,minmax(0,1fr));list-style:none;margin:1.2rem 0;padding:0;border:1px solid var(--line)}
        .counts li{padding:.5rem .6rem;border-right:1px solid var(--line);display:flex;flex-direction:column;gap:.1rem}
        .counts li:last-child{border-right:0}
        .counts li{box-shadow:0 1px 0 var(--line)}
        .number{font-size:1.7rem;line-height:1.1;font-variant-numeric:tabular-nums}
        .none .number{color:var(--soft)}
        .counts .mark{white-space:normal}
        .counts .none .mark{color:#4a5259;background:#fff}
        .mark{white-space:nowrap;font-weight:600;font-size:.9rem;padding:0 .35rem;border-radius:2px;border:1px solid currentColor;align-self:flex-start}
        .mark.fail{color:#8f1710;background:#fdeceb}
        .mark.warn{color:#6b4200;background:#fff2d6}
        .mark.pass{color:#14522c;background:#e7f4eb}
        .mark.plain{color:#333a40;background:#f3f4f5}
        .note{border-left:4px solid var(--ink);padding-left:.7rem}
        .deciding{padding-left:1.4rem}
        .deciding li{margin:.5rem 0}
        .do{color:var(--soft)}
        .caution{border:1px solid var(--ink);padding:.5rem .8rem}
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
        .silent{table-layout:fixed}
        .silent thead th:first-child{width:8rem}
        .silent thead th:nth-child(2){width:26%}
        .silent thead th:nth-child(5){width:25%}
        .silent tbody th{font-weight:normal}
        .silent .small{font-size:.85em}
        .sign .field{min-width:9rem}
        .sign .tick{font-size:1.3rem;line-height:1}
        .unseen{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%);white-space:nowrap}
        footer{margin-top:3rem;border-top:3px solid var(--ink)}
        .unread{border:3px solid #8f1710;padding:0 1rem .6rem;margin-top:1.5rem}
        @media (max-width:68rem){.pair .figures{float:none;width:auto;margin-left:0}.counts{grid-template-columns:repeat(4,minmax(0,1fr))}}
        @media (max-width:40rem){body{padding:0 .8rem 2rem}.counts{grid-template-columns:repeat(2,minmax(0,1fr))}.counts li{padding:.4rem}.id{white-space:normal}.ident,.finding dl{grid-template-columns:minmax(0,1fr)}.ident dt,.finding dt{font-size:.85rem}.finding{padding:.6rem .6rem}.finding dd{margin-bottom:.3rem}.silent thead{position:absolute;clip-path:inset(50%)}.silent tr,.silent th,.silent td{display:block;border:0;padding:.15rem 0}.silent tr{border-bottom:1px solid var(--line);padding:.5rem 0}}
        @page{size:A4;margin:15mm 14mm 17mm;@bottom-right{content:"page " counter(page) " of " counter(pages);font-size:8pt}@bottom-left{content:"Laygate plan check";font-size:8pt}}
        @media print{
        html{font-size:9.5pt;print-color-adjust:exact;-webkit-print-color-adjust:exact}
        body{max-width:none;padding:0}
        nav,.skip{display:none}
        header{padding-top:0}
        .plan+.plan{break-before:page}
        .newpage{break-before:page}
        h2,h3,h4,h5,caption,figcaption,.legend,h3+.quiet,.reads{break-after:avoid}
        .drawn{break-inside:avoid}
        figure{break-inside:auto}
        thead{display:table-header-group}
        tr{break-inside:avoid}
        tbody tr:first-child{break-before:avoid}
        .scroll{overflow:visible}
        .plot{min-width:0}
        .pair,.single .figures{display:block}
        .subject{break-before:auto}
        .pair .figures{float:none;width:auto;margin:0}
        .single .cards,.pair .cards{columns:auto}
        .finding dl{font-size:8.5pt}
        .finding .step{font-size:7.5pt;line-height:1.35}
        .silent{font-size:7.5pt}
        .silent thead th:first-child{width:6rem}
        .plot{max-width:150mm}
        .counts{grid-template-columns:repeat(8,minmax(0,1fr))}
        .ident{grid-template-columns:max-content 1fr}
        .finding dl{grid-template-columns:4.6rem minmax(0,1fr)}
        details::details-content{content-visibility:visible;height:auto}
        summary{display:none}
        .wish:not([open]){display:none}
        .wish>summary{display:block;list-style:none}
        .onpaper{display:block}
        .sign tbody td,.sign tbody th{height:11mm}
        .values,.inputs{font-size:7.5pt}
        .inputs{line-height:1.3}
        .columns{columns:2;column-gap:6mm}
        .columns table{margin-top:0}
        .columns .inputs{overflow-wrap:anywhere}
        .columns .inputs th:first-child{width:2.4rem}
        .values tbody th,.columns .values td{white-space:nowrap}
        .rest,.conformity,.sign{font-size:8pt}
        .rest,.conformity,.sign,.inputs,.changes{table-layout:fixed}
        .rest th:first-child,.conformity .result{width:7.6rem}
        .rest th:nth-child(2){width:29%}
        .rest th:nth-child(3){width:17%}
        .conformity th:first-child{width:26%}
        .conformity.clauses th:first-child{width:11%}
        .conformity .by{width:11%}
        .conformity .about{width:21%}
        .conformity .known{width:13%}
        .sign th:first-child{width:2.2rem}
        .sign .why{width:18%}
        .sign .judged{width:4rem}
        .sign .name{width:22%}
        .sign .date{width:13%}
        .inputs thead th:nth-child(2){width:52%}
        .first{font-size:.92em}
        h2{margin:1rem 0 .5rem}
        .first h3{margin:1rem 0 .4rem}
        .first .deciding li{margin:.25rem 0}
        .first table{margin-bottom:.4rem}
        .caution{font-size:.88em;break-inside:avoid}
        .counts{margin:.7rem 0}
        .values th,.values td,.inputs th,.inputs td{padding:.4mm 1.5mm}
        .columns .values th,.columns .values td{padding:.3mm .8mm}
        th,td{min-width:0}
        }
        """;
}
